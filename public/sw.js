// Guide, finder and walking lists without network. One page of each, kept with its scripts, replays any address on the phone; answers
// that must not be forgotten wait in a queue and are sent later. Each carries its step as a key: sent twice, it is one.
const KEPT = 'plenum-offline-3'
const QUEUE = 'plenum-queue-1'
// Pages that ask no data and no account; they are fetched without the visitor's own cookie.
const CHECK = '/check/offline'
const FIND = ['/find', '/find/light', '/find/kept']
// Rounds and the walking lists opened last, as the person signed in saw them; a page that knows of nobody deletes them.
const LISTS = 'plenum-lists-1'
const MOST_LISTS = 12
const PATIENCE_MS = 6000

const isList = ({ pathname }) => /^\/rounds(\/walk)?$/.test(pathname)
const shellOf = ({ pathname }) => {
  if (/^(\/home\/[^/]+)?\/check(\/|$)/.test(pathname)) return CHECK
  return FIND.find((path) => path === pathname.replace(/\/$/, '')) ?? null
}

// What a script or a style names; its own name changes with it, so that it is read once.
const namedIn = new Map()

async function namesIn(file) {
  const text = await ((await caches.match(file)) ?? (await fetch(file))).text()
  if (file.endsWith('.js'))
    return [...text.matchAll(/static\/chunks\/[\w.~-]+\.js/g)].map(([later]) => `/_next/${later}`)
  const fonts = [...text.matchAll(/url\(["']?([^"')]+?\.woff2)["']?\)/g)]
  return fonts.map(([, font]) => new URL(font, new URL(file, location)).pathname)
}

/** The scripts, styles and fonts that a page names, and those that they load later. */
async function filesOf(page) {
  const text = await page.clone().text()
  const files = new Set(text.match(/\/_next\/static\/[\w./~-]+\.(?:js|css)/g) ?? [])
  // Those that are added meanwhile are walked too.
  for (const file of files) {
    if (!/\.(js|css)$/.test(file)) continue
    if (!namedIn.has(file)) namedIn.set(file, await namesIn(file))
    for (const name of namedIn.get(file)) files.add(name)
  }
  return files
}

let turn = Promise.resolve()
/** Keeps a list as it is now. One that may no longer be seen is let go of, and the oldest when there are many. */
async function keepList(href) {
  const page = await fetch(href, { redirect: 'manual', headers: { accept: 'text/html' } })
  if (page.status >= 500) return
  const cache = await caches.open(LISTS)
  if (!page.ok) return cache.delete(href)
  for (const file of await filesOf(page)) if (!(await caches.match(file))) await cache.add(file)
  // Not before all of it is here: the network may go in between. Put over the earlier one, which is there until then;
  // it counts as the latest.
  await cache.put(href, page)
  const lists = (await cache.keys()).filter(({ url }) => isList(new URL(url)))
  const stay = lists.slice(-MOST_LISTS)
  const wanted = new Set(stay.map(({ url }) => url))
  for (const list of stay)
    for (const file of await filesOf(await cache.match(list))) wanted.add(new URL(file, location).href)
  for (const { url } of await cache.keys()) if (!wanted.has(url)) await cache.delete(url)
}

/** Fetches a shell and everything it names, and lets go of what an earlier one named. */
async function keep() {
  const cache = await caches.open(KEPT)
  const wanted = new Set()
  for (const shell of [CHECK, ...FIND]) {
    const page = await fetch(shell, { credentials: 'omit' })
    if (!page.ok) continue
    const files = await filesOf(page)
    for (const file of files) if (!(await cache.match(file))) await cache.add(file)
    await cache.put(shell, page)
    wanted.add(shell)
    for (const file of files) wanted.add(file)
  }
  for (const request of await cache.keys()) if (!wanted.has(new URL(request.url).pathname)) await cache.delete(request)
}

async function offline(request) {
  if (isList(new URL(request.url))) return (await caches.match(request, { cacheName: LISTS })) ?? Response.error()
  const shell = shellOf(new URL(request.url))
  return (shell && (await caches.match(shell))) ?? Response.error()
}

async function open(event) {
  try {
    const late = new Promise((_, reject) => setTimeout(() => reject(new Error('too slow')), PATIENCE_MS))
    const response = await Promise.race([fetch(event.request), late])
    if (response.status >= 500) return offline(event.request)
    return response
  } catch {
    return offline(event.request)
  }
}

async function answer(request) {
  const kept = request.clone()
  try {
    return await fetch(request)
  } catch {
    const fields = Object.fromEntries(await kept.formData())
    fields.queued = String(Math.floor(Date.now() / 60000))
    const key = `/queue/${encodeURIComponent(`${fields.home} ${fields.walk} ${fields.node} ${fields.answer}`)}`
    const queue = await caches.open(QUEUE)
    if (!(await queue.match(key))) await queue.put(key, new Response(JSON.stringify(fields)))
    return Response.redirect(new URL(fields.next, location.origin), 303)
  }
}

async function send() {
  const queue = await caches.open(QUEUE)
  for (const key of await queue.keys()) {
    const body = new URLSearchParams(await (await queue.match(key)).json())
    const { ok, status } = await fetch('/check/answer', { method: 'POST', body, redirect: 'manual' })
    // 503: nobody is signed in who may write there, or the database is away. It waits.
    if (ok || (status >= 400 && status < 500)) await queue.delete(key)
  }
}

self.addEventListener('install', (event) => event.waitUntil(keep().then(() => self.skipWaiting())))
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()))
self.addEventListener('message', (event) => {
  const { data } = event
  if (data === 'send') send().catch(() => {})
  if (!data?.keep || !isList(new URL(data.keep))) return
  // One after the other: each lets go of what no kept list names.
  turn = turn.then(() => keepList(data.keep)).catch(() => {})
  event.waitUntil(turn)
})
// A notice of what is due; it leads to the page that says everything.
self.addEventListener('push', (event) => {
  const { title, path, tag } = event.data?.json() ?? {}
  if (title) event.waitUntil(self.registration.showNotification(title, { tag, icon: '/icon-192.png', data: { path } }))
})
self.addEventListener('notificationclick', (event) => {
  event.notification.close()
  const { href, origin } = new URL(event.notification.data?.path ?? '/homes', location.origin)
  if (origin === location.origin) event.waitUntil(self.clients.openWindow(href))
})
self.addEventListener('fetch', (event) => {
  const { request } = event
  const url = new URL(request.url)
  if (url.origin !== location.origin) return
  if (request.method === 'POST' && url.pathname === '/check/answer') event.respondWith(answer(request))
  else if (request.mode === 'navigate' && request.method === 'GET' && (shellOf(url) || isList(url))) {
    event.respondWith(open(event))
    // The first screen is where a new version is looked for.
    if (url.pathname === '/check' || url.pathname === '/find') event.waitUntil(keep().catch(() => {}))
  } else if (request.method === 'GET' && url.pathname.startsWith('/_next/static/'))
    event.respondWith(caches.match(request, { ignoreSearch: true }).then((found) => found ?? fetch(request)))
})
