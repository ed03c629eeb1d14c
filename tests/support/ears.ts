import type { CDPSession, Page } from 'playwright-core'

/** A part of a page as a screen reader is given it. */
interface Heard {
  role: string
  name: string
  /** Of a heading. */
  level: number
  /** Of a link. */
  url: string
  parts: Heard[]
}

interface AxValue {
  value?: unknown
}
interface AxNode {
  nodeId: string
  ignored: boolean
  role?: AxValue
  name?: AxValue
  properties?: { name: string; value: AxValue }[]
  childIds?: string[]
}

async function hear(page: Page): Promise<Heard> {
  const session: CDPSession = await page.context().newCDPSession(page)
  const { nodes } = (await session.send('Accessibility.getFullAXTree')) as unknown as { nodes: AxNode[] }
  await session.detach()
  const byId = new Map(nodes.map((node) => [node.nodeId, node]))
  const root = nodes[0]
  if (!root) throw new Error('nothing is heard of the page')
  // What is ignored is passed over, and its parts are heard in its place.
  const partsOf = (node: AxNode): Heard[] =>
    (node.childIds ?? []).flatMap((id) => {
      const part = byId.get(id)
      return !part ? [] : part.ignored ? partsOf(part) : [heard(part)]
    })
  const heard = (node: AxNode): Heard => {
    const property = (name: string) => node.properties?.find((each) => each.name === name)?.value.value
    return {
      role: String(node.role?.value ?? ''),
      name: String(node.name?.value ?? '')
        .trim()
        .replace(/\s+/g, ' '),
      level: Number(property('level') ?? 0),
      url: String(property('url') ?? ''),
      parts: partsOf(node),
    }
  }
  return heard(root)
}

function* all(heard: Heard): Generator<Heard> {
  yield heard
  for (const part of heard.parts) yield* all(part)
}

const NAMED =
  /^(link|button|textbox|searchbox|spinbutton|checkbox|radio|combobox|listbox|slider|switch|Date|DateTime|image|img|graphics-document|table|dialog|region|group|radiogroup|progressbar|meter|DisclosureTriangle)$/
// Standing alone they are told by their kind; of several each needs a name of its own.
const LANDMARKS = ['banner', 'navigation', 'main', 'contentinfo', 'complementary', 'search', 'region']

// The browser's own.
const DATE_PICKER = 'Show date picker'

/** What is wrong with a page for somebody who hears it: one line each. `inGuide`: it has no head and no foot. */
export async function unheard(page: Page, { inGuide }: { inGuide: boolean }): Promise<string[]> {
  const root = await hear(page)
  const everything = [...all(root)]
  const of = (role: string) => everything.filter((each) => each.role === role)
  const found: string[] = []

  const headings = of('heading')
  const [main, ...mains] = of('main')
  if (!main || mains.length > 0) found.push(`has ${mains.length + (main ? 1 : 0)} main parts`)
  const firstOfMain = main && [...all(main)].find(({ role }) => role === 'heading')
  if (firstOfMain?.level !== 1) found.push(`begins with a heading of level ${firstOfMain?.level}: ${firstOfMain?.name}`)
  const tops = headings.filter(({ level }) => level === 1)
  if (tops.length !== 1) found.push(`has ${tops.length} headings of level 1`)
  for (const [i, { level, name }] of headings.entries()) {
    if (level > (headings[i - 1]?.level ?? 0) + 1) found.push(`its headings jump to level ${level}: ${name}`)
    if (name === '') found.push(`has an empty heading of level ${level}`)
  }

  // What lies folded is a group by itself, and its line to press has the name.
  for (const each of everything)
    if (NAMED.test(each.role) && each.name === '' && each.parts[0]?.role !== 'DisclosureTriangle')
      found.push(`has no name: ${each.role} ${words(each).slice(0, 60)}`)
  for (const role of LANDMARKS) {
    const names = of(role).map(({ name }) => name)
    if (names.length > 1 && (names.includes('') || new Set(names).size < names.length))
      found.push(`cannot be told apart: ${role} ${names.map((name) => `“${name}”`).join(', ')}`)
  }
  for (const role of ['banner', 'contentinfo'])
    if (of(role).length !== (inGuide ? 0 : 1)) found.push(`has ${of(role).length} of ${role}`)

  // Read out in a list of all links or buttons each has to say where it leads, or what it is about.
  const links = byName(of('link'))
  for (const [name, same] of links) {
    const to = new Set(same.map(({ url }) => url))
    if (to.size > 1) found.push(`leads to ${to.size} places by one name: link “${name}”`)
  }
  for (const [name, same] of byName(of('button').filter(({ name }) => name !== DATE_PICKER)))
    if (same.length > 1) found.push(`does ${same.length} things by one name: button “${name}”`)

  for (const table of of('table'))
    if (![...all(table)].some(({ role }) => role === 'columnheader' || role === 'rowheader'))
      found.push(`has a table without headings: ${table.name}`)
  found.push(...(await page.evaluate(brokenReferences)))
  const title = await page.title()
  if (!/^\S.* · Plenum$|^Plenum$/.test(title)) found.push(`has the title “${title}”`)
  if ((await page.evaluate('document.documentElement.lang')) !== 'en') found.push('does not say its language')
  return [...new Set(found)]
}

// What names something by an id that is not there names nothing, and says nothing about it.
function brokenReferences(): string[] {
  return ['aria-labelledby', 'aria-describedby', 'aria-controls', 'for', 'list'].flatMap((attribute) =>
    [...document.querySelectorAll(`[${attribute}]`)].flatMap((element) =>
      (element.getAttribute(attribute) ?? '')
        .split(/\s+/)
        .filter((id) => !document.getElementById(id))
        .map((id) => `names by ${attribute} what is not there: <${element.tagName.toLowerCase()}> ${id}`),
    ),
  )
}

function byName(heard: Heard[]): Map<string, Heard[]> {
  const groups = new Map<string, Heard[]>()
  for (const each of heard) groups.set(each.name, [...(groups.get(each.name) ?? []), each])
  return groups
}

function words(heard: Heard): string {
  return [...all(heard)]
    .filter(({ role }) => role === 'StaticText')
    .map(({ name }) => name)
    .join(' ')
}
