import { filterNumber, SHEET_COLUMNS, SHEET_FILTERS, type SheetColumn } from '@/lib/core/unit-sheet'

/** What each column of a file is: a column of ours, or `''` where it is passed over. */
export type Matching = (SheetColumn | '')[]

// What people call our columns, beside our own headings. The first filter's columns stand for “the” filter.
const NAMES: [string, string][] = [
  ['building', 'building property address site house'],
  ['unit', 'unit apartment apt flat home name suite door'],
  ['heat', 'heating heat heatsource heatingsource furnace'],
  ['cool', 'cooling cool ac aircondition airconditioning coolsource coolingsource'],
  ['tons', 'tons tonnage tonsofcooling coolingtons'],
  ['inputBtuh', 'input btu btuh burnerinput furnacebtu heatinginput'],
  ['people', 'people occupants residents persons tenants'],
  ['pets', 'pets animals pet'],
  ['heatingServiced', 'heatingservice lastheatingservice heatingserviced furnaceservice'],
  ['coolingServiced', 'coolingservice lastcoolingservice coolingserviced acservice'],
  ['accessNote', 'access accessnote note notes entry key howtogetin'],
  ['place-#', 'filterplace filterlocation place location filter#place filter#location place# location#'],
  ['size-#', 'filtersize size filter filter# filter#size size# filtersize# filter#sizein sizein'],
  ['medium-#', 'filterkind kind medium media filtertype type filter#kind filter#type filter#medium kind# type#'],
  ['merv-#', 'merv rating filter#merv merv# filtermerv'],
  [
    'changed-#',
    'changed changedon filterchanged lastchange lastchanged lastfilterchange filter#changedon filter#changed filter#lastchange changed#',
  ],
]

const BY_NAME = new Map<string, SheetColumn>()
for (const [column, names] of NAMES)
  for (const name of names.split(' '))
    for (let number = 1; number <= (column.includes('#') ? SHEET_FILTERS : 1); number++)
      if (name.includes('#') || number === 1)
        BY_NAME.set(name.replace('#', String(number)), column.replace('#', String(number)) as SheetColumn)
for (const [column, heading] of SHEET_COLUMNS) BY_NAME.set(plain(heading), column)

function plain(heading: string): string {
  return heading
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, '')
}

/** What each heading seems to mean; of two that seem to mean the same the first counts. */
export function matchColumns(headings: readonly string[]): Matching {
  const taken = new Set<string>()
  return headings.map((heading) => {
    const column = BY_NAME.get(plain(heading)) ?? ''
    if (column === '' || taken.has(column)) return ''
    taken.add(column)
    return column
  })
}

/** Columns as a form names them; what is unknown is passed over. */
export function parseMatching(texts: readonly string[]): Matching {
  return texts.map((text) => [...SHEET_COLUMNS.keys()].find((column) => column === text) ?? '')
}

/** What is wrong with a matching, in words: one column stands for two, or the key is missing. */
export function matchingFaults(matching: Matching, headings: readonly string[]): string[] {
  const faults: string[] = []
  for (const [column, name] of SHEET_COLUMNS) {
    const of = headings.filter((_, i) => matching[i] === column)
    if (of.length > 1) faults.push(`“${name}” is chosen for ${of.length} columns: ${of.join(', ')}. Keep one.`)
    if (of.length === 0 && filterNumber(column) === 0 && (column === 'building' || column === 'unit'))
      faults.push(`No column is “${name}”. Choose which column names the ${column}.`)
  }
  return faults
}
