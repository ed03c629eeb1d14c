import type { Page } from 'playwright-core'

/** One stop of the Tab key, as the page saw it. */
interface Stop {
  /** Its place among everything that can be reached, in the order of the document; -1 where it is none of these. */
  place: number
  said: string
  /** How far down it stands, and whether it moves with the window. */
  top: number
  bottom: number
  floats: boolean
  width: number
  height: number
  /** A link within a sentence, which need not be large. */
  isInline: boolean
  hasFocusMark: boolean
  /** Known once the next key is pressed: something else lies over all of it. */
  isCovered?: boolean
}

const REACHABLE = 'a[href], button, input:not([type=hidden]), select, textarea, summary, [tabindex="0"]'

function watchFocus(reachable: string): void {
  const isSeen = (each: Element) =>
    each.checkVisibility({ visibilityProperty: true }) && !(each as HTMLInputElement).disabled
  // Of several radio buttons of a name one is a stop: the one that is chosen, else the first.
  const isStop = (each: Element) => {
    if (!(each instanceof HTMLInputElement) || each.type !== 'radio') return true
    const group = [...(each.form ?? document).querySelectorAll<HTMLInputElement>('input[type=radio]')].filter(
      ({ name, form }) => name === each.name && form === each.form,
    )
    return each === (group.find(({ checked }) => checked) ?? group[0])
  }
  const all = [...document.querySelectorAll(reachable)].filter(
    (each) => (each as HTMLElement).tabIndex >= 0 && isSeen(each) && isStop(each),
  )
  // A small box or a clipped radio is pressed by its label.
  const pressed = (each: Element) => (each.matches('input') && (each as HTMLInputElement).labels?.[0]) || each
  const floats = (each: Element | null): boolean =>
    each !== null && (/fixed|sticky/.test(getComputedStyle(each).position) || floats(each.parentElement))
  const stops: Stop[] = []
  const marks = (each: Element) => {
    const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(each)
    return outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2 && !/, 0\)$/.test(outlineColor)
  }
  const isCovered = (each: Element) => {
    const { left, top, width, height } = pressed(each).getBoundingClientRect()
    const points = [0.02, 0.5, 0.98].flatMap((x) => [0.1, 0.5, 0.9].map((y) => [left + x * width, top + y * height]))
    return !points.some(([x = 0, y = 0]) => {
      const there = document.elementFromPoint(x, y)
      return (
        there !== null &&
        (each.contains(there) || pressed(each).contains(there) || (there.contains(each) && !floats(there)))
      )
    })
  }
  document.addEventListener('focusin', ({ target }) => {
    const each = target as Element
    const box = pressed(each).getBoundingClientRect()
    const inline = each.matches('a') && getComputedStyle(each).display === 'inline'
    const around = each.parentElement?.closest('p, li, dd, td, h2, h3, label, dt')?.textContent?.trim() ?? ''
    const said = (each.getAttribute('aria-label') ?? pressed(each).textContent ?? '').trim().replace(/\s+/g, ' ')
    stops.push({
      place: all.indexOf(each),
      said: `<${each.tagName.toLowerCase()}> ${said.slice(0, 50) || each.id}`,
      ...{ top: box.top + scrollY, bottom: box.bottom + scrollY, width: box.width, height: box.height },
      floats: floats(each),
      isInline: inline && around.length > (each.textContent ?? '').trim().length,
      hasFocusMark: marks(each) || marks(pressed(each)),
    })
  })
  document.addEventListener(
    'keydown',
    () => {
      const last = stops.at(-1)
      const each = document.activeElement
      if (last && each && each !== document.body) last.isCovered = isCovered(each)
    },
    { capture: true },
  )
  Object.assign(window, { focusStops: stops, focusAll: all.map((each) => each.outerHTML.slice(0, 100)) })
  document.body.tabIndex = -1
  document.body.focus()
  document.body.removeAttribute('tabindex')
  stops.length = 0
}

/**
 * Goes through the page by the Tab key alone, from its top to its end. Gives what is wrong with that, one line each: a
 * control that is passed by or comes out of turn, one that does not show it has the focus, or has it unseen, a trap, a
 * target that is too small, a way past the head of the page that does not work.
 */
export async function unreachable(page: Page): Promise<string[]> {
  await page.evaluate(`(${watchFocus})(${JSON.stringify(REACHABLE)})`)
  const all = (await page.evaluate('focusAll')) as string[]
  let stops: Stop[] = []
  // A date has a stop for each of its parts and one for its calendar.
  for (let keys = 0; keys < all.length * 6 + 10; keys++) {
    await page.keyboard.press('Tab')
    if (keys % 8 !== 7) continue
    stops = (await page.evaluate('focusStops')) as Stop[]
    if (stops.some(({ place }, i) => i > 0 && place === stops[0]?.place)) break
  }
  const end = stops.findIndex(({ place }, i) => i > 0 && place === stops[0]?.place)
  const once = end === -1 ? stops : stops.slice(0, end)
  const reached = new Set(once.map(({ place }) => place))
  const found = all.flatMap((each, place) => (reached.has(place) ? [] : [`is passed by: ${each}`]))
  if (end === -1 && all.length > 1) found.push('the keyboard does not come round')
  for (const [i, stop] of once.entries()) {
    const before = once[i - 1]
    if (!stop.hasFocusMark) found.push(`does not show the focus: ${stop.said}`)
    if (stop.isCovered) found.push(`has the focus under something else: ${stop.said}`)
    if (!stop.isInline && (stop.width < 24 || stop.height < 24))
      found.push(`is ${Math.round(stop.width)} by ${Math.round(stop.height)} px: ${stop.said}`)
    if (!before) continue
    if (stop.place <= before.place) found.push(`comes out of turn: ${stop.said}`)
    if (!stop.floats && !before.floats && stop.bottom < before.top)
      found.push(`stands above the one before it: ${stop.said}`)
  }
  return [...new Set([...found, ...(await skipFaults(page))])]
}

async function skipFaults(page: Page): Promise<string[]> {
  // Where people are told to leave there is nothing to skip to, and nothing to tap.
  if (!(await page.evaluate("document.querySelector('a.skip')?.checkVisibility() ?? false"))) return []
  await page.evaluate("document.querySelector('a.skip').focus()")
  const isSeen = "document.activeElement.getBoundingClientRect().top >= 0 && document.activeElement.matches('.skip')"
  const found = (await page.evaluate(isSeen)) ? [] : ['the way past the head is not seen']
  await page.keyboard.press('Enter')
  const at = await page.evaluate('document.activeElement.id')
  return at === 'main' ? found : [...found, `the way past the head leads to “${at}”`]
}
