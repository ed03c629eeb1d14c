const HERE = 'http://here.invalid'

/**
 * A path of this installation that somebody is to come back to, or `/`: an address elsewhere, with all the ways to
 * write one (`//elsewhere`, `/\elsewhere`, a control character in between), is never followed.
 */
export function localPath(asked: unknown): string {
  if (typeof asked !== 'string' || !/^\/(?![/\\])/.test(asked) || /[\p{Cc}\\]/u.test(asked) || asked.length > 500)
    return '/'
  if (!URL.canParse(asked, HERE)) return '/'
  const url = new URL(asked, HERE)
  // `/.//elsewhere` is read as the path `//elsewhere`, which a browser would follow to another site.
  return url.origin === HERE && !url.pathname.startsWith('//') ? `${url.pathname}${url.search}` : '/'
}
