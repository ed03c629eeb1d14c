import type { MetadataRoute } from 'next'

/** For a phone's home screen: it opens where someone with no heat needs it. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    name: 'Plenum',
    short_name: 'Plenum',
    description: 'What is due for your heating and cooling, and what to do when it stops.',
    start_url: '/',
    scope: '/',
    display: 'standalone',
    background_color: '#f1f4f5',
    theme_color: '#f1f4f5',
    icons: [
      { src: '/icon-192.png', sizes: '192x192', type: 'image/png' },
      { src: '/icon-512.png', sizes: '512x512', type: 'image/png' },
      { src: '/icon-512-whole.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    ],
    shortcuts: [{ name: 'A problem right now', url: '/check' }],
  }
}
