import type { Page } from 'playwright-core'

/**
 * What a person who needs large text does not get to read on the page as it stands: text that runs off to the side, is
 * cut, stands on other text, or has room for a letter a line. One line each.
 */
export function unreadable(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = []
    const say = (element: Element) =>
      `<${element.tagName.toLowerCase()} class="${element.getAttribute('class') ?? ''}"> ${(element.textContent ?? '').trim().replace(/\s+/g, ' ').slice(0, 50)}`
    const root = document.documentElement
    if (root.scrollWidth > root.clientWidth)
      found.push(`the page is ${root.scrollWidth - root.clientWidth} px too wide`)
    // What is clipped to nothing is there for ears only, until it gets the focus.
    const isClipped = (element: Element | null): boolean =>
      element !== null && (getComputedStyle(element).clipPath !== 'none' || isClipped(element.parentElement))
    const isSeen = (element: Element) =>
      element.checkVisibility({ opacityProperty: true, visibilityProperty: true }) && !isClipped(element)
    // A wide table may be moved sideways in a box of its own, if the keyboard gets there.
    const inBox = (element: Element) => element.closest('.table-box[tabindex="0"]') !== null
    // What moves over the page when it is scrolled is not laid out with it.
    const floats = (element: Element | null): boolean =>
      element !== null && (/fixed|sticky/.test(getComputedStyle(element).position) || floats(element.parentElement))
    const boxes: { box: DOMRect; node: Node; element: Element }[] = []
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const element = node.parentElement
      if (!element || !node.nodeValue?.trim() || !isSeen(element) || element.closest('svg, option, script, style'))
        continue
      const range = document.createRange()
      range.selectNodeContents(node)
      const boxesOf = [...range.getClientRects()].filter(({ width }) => width >= 1)
      // A long word may be broken once; more lines than that hold a few letters each.
      if (boxesOf.length > 2 * (node.nodeValue.trim().split(/[\s-]+/).length + 1))
        found.push(`has room for a few letters a line: ${say(element)}`)
      for (const box of boxesOf) {
        if ((box.right > root.clientWidth + 1 || box.left < -1) && !inBox(element))
          found.push(`runs off the side: ${say(element)}`)
        if (!floats(element)) boxes.push({ box, node, element })
      }
    }
    for (const element of document.querySelectorAll('body *')) {
      if (!isSeen(element) || element.closest('svg')) continue
      const style = getComputedStyle(element)
      const isCut =
        (/hidden|clip/.test(style.overflowX) && element.scrollWidth > element.clientWidth + 1) ||
        (/hidden|clip/.test(style.overflowY) && element.scrollHeight > element.clientHeight + 1)
      if (isCut && element.textContent?.trim()) found.push(`is cut: ${say(element)}`)
    }
    // A line's box is taller than its letters: what counts is the middle of it.
    boxes.sort((a, b) => a.box.top - b.box.top)
    for (const [i, a] of boxes.entries())
      for (const b of boxes.slice(i + 1)) {
        if (b.box.top > a.box.bottom) break
        if (a.node === b.node) continue
        const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left)
        const high =
          Math.min(a.box.bottom - a.box.height / 5, b.box.bottom - b.box.height / 5) -
          Math.max(a.box.top + a.box.height / 5, b.box.top + b.box.height / 5)
        if (wide > 2 && high > 2) found.push(`stands on other text: ${say(a.element)} / ${say(b.element)}`)
      }
    return [...new Set(found)]
  })
}

/** What still moves, or would, for somebody who asked for less of it. */
export function moving(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const now = document.getAnimations().filter(({ effect }) => Number(effect?.getTiming().duration) > 10)
    const would = [...document.querySelectorAll('*')].filter((element) =>
      ['', '::before', '::after'].some((part) => {
        const { transitionDuration, animationName, scrollBehavior } = getComputedStyle(element, part)
        const seconds = Math.max(...transitionDuration.split(',').map((each) => Number.parseFloat(each)))
        return seconds > 0.01 || animationName !== 'none' || scrollBehavior === 'smooth'
      }),
    )
    return [
      ...now.map(() => 'something is moving'),
      ...would.map((each) => `would move: ${each.outerHTML.slice(0, 80)}`),
    ]
  })
}

/** What can no longer be told from the paper where the reader has forced the colours. */
export function lostInForcedColours(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const rgb = (colour: string) => (colour.match(/[\d.]+/g) ?? []).map(Number)
    const light = (colour: string) => {
      const [r = 0, g = 0, b = 0] = rgb(colour).map((part) => {
        const share = part / 255
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
      })
      return 0.2126 * r + 0.7152 * g + 0.0722 * b
    }
    const isSeeThrough = (colour: string) => colour === 'none' || (rgb(colour)[3] ?? 1) === 0
    const contrast = (a: string, b: string) => {
      const [dark = 0, bright = 0] = [light(a), light(b)].sort((x, y) => x - y)
      return (bright + 0.05) / (dark + 0.05)
    }
    const paper = getComputedStyle(document.body).backgroundColor
    const found: string[] = []
    for (const each of document.querySelectorAll('button, input, select, textarea, .button')) {
      const style = getComputedStyle(each)
      const type = each.getAttribute('type')
      if (!each.checkVisibility() || style.clipPath !== 'none' || /^(checkbox|radio|file|hidden)$/.test(type ?? ''))
        continue
      if (each.matches('.quiet, .who button')) continue
      const hasEdge = Number.parseFloat(style.borderBottomWidth) >= 1 && contrast(style.borderBottomColor, paper) >= 3
      if (!hasEdge && contrast(style.backgroundColor, paper) < 3)
        found.push(`has no edge: ${each.outerHTML.slice(0, 90)}`)
    }
    const SHAPES = ':is(path, rect, circle, ellipse, line, polyline, polygon, text)'
    for (const each of document.querySelectorAll(`svg ${SHAPES}`)) {
      if (!each.checkVisibility() || each.closest('defs, pattern, clipPath, mask, symbol')) continue
      const { fill, stroke, strokeWidth, opacity } = getComputedStyle(each)
      const isLine = /^(line|polyline)$/.test(each.tagName)
      const paints = [isLine ? 'none' : fill, Number.parseFloat(strokeWidth) > 0 ? stroke : 'none']
      const shown = paints.filter((paint) => !isSeeThrough(paint) && !paint.startsWith('url'))
      if (shown.length === 0 || Number(opacity) === 0) continue
      if (shown.some((paint) => contrast(paint, paper) >= 1.5)) continue
      // It may lie on a shape that is seen, or be the ground of one.
      const others = [...(each.closest('svg')?.querySelectorAll(SHAPES) ?? [])].filter((other) => other !== each)
      const touches = others.some((other) => {
        const [a, b] = [each.getBoundingClientRect(), other.getBoundingClientRect()]
        const apart = a.right < b.left || b.right < a.left || a.bottom < b.top || b.bottom < a.top
        const { fill, stroke } = getComputedStyle(other)
        const isSeen = [fill, stroke].some((paint) => !isSeeThrough(paint) && contrast(paint, paper) >= 1.5)
        return !apart && isSeen
      })
      if (!touches)
        found.push(
          `is not seen: <${each.tagName} class="${each.getAttribute('class') ?? ''}"> in ${each.closest('svg')?.getAttribute('class')}: ${shown}`,
        )
    }
    return [...new Set(found)]
  })
}
