const SAME = 'the same answer: '
const GUARD = 'a guard that our own tables never reach; it names the fault instead of a worse one later'
const TYPES = `${SAME}the types ask for it, no caller comes without`

/** By file: a part of a line of code, and why a mutant of that line may live. */
export const WHY: Record<string, readonly (readonly [part: string, why: string])[]> = {
  'lib/core/air-path.ts': [['if (!row) throw', GUARD]],
  'lib/core/climate.ts': [
    ['if (total(0, sigma) < hdd65)', `${SAME}where both sides are equal the swing is 0 either way`],
    [
      'if (knownHigh === undefined)',
      `${SAME}doubling on from a bound that is high enough already only widens the search`,
    ],
    ['if (atLow >= 0) return low', `${SAME}the search ends at 0 too, later`],
    [
      'for (let i = 0; i < 100',
      `${SAME}the width ends the search after a dozen steps; the count is there for a fault of ours`,
    ],
    ['if (between <= low', `${SAME}it ends a search whose ends are neighbouring numbers a step sooner`],
    ['if (value < 0)', `${SAME}exactly 0 is the root from either side`],
    ["if (kept === 'low') atLow /= 2", `${SAME}how fast the ends close in, not where`],
    ["if (kept === 'high') atHigh /= 2", `${SAME}how fast the ends close in, not where`],
  ],
  'lib/core/device-tasks.ts': [
    ['const isNewer =', `${SAME}made on the day it was fitted, both count alike`],
    ['const printed =', `${SAME}without an end of life there is none to leave out`],
    ['if (device.kind ===', TYPES],
    ['return compareDays(printed, byAge)', `${SAME}equal days are one day`],
  ],
  'lib/core/filter-item.ts': [
    ['const isTold =', `${SAME}only at exactly half a per cent`],
    ["if (forecast.basis === 'calendar'", `${TYPES}; what has no loading model goes by its calendar`],
    ['if (limit === null || velocity === null', `${TYPES}; what has no air of the system has no limit either`],
    ['const fits =', '_open_: the table has no larger size of another depth that comes first'],
  ],
  'lib/core/warnings.ts': [['home.assumed ?? []', `${TYPES}; an assumption that is none has no words`]],
  'lib/core/dust.ts': [['tables.pets[0]', `${TYPES}; the table’s rows all have one mark`]],
  'lib/core/effects.ts': [
    ['tables.pets[1]', `${TYPES}; the table’s rows all have one mark`],
    ['const isFilterTask =', `${SAME}no other task has a filter for its subject`],
    ['const systems = home.systems.map', `${SAME}what another system does never moves this filter`],
    ['readings: home.readings.filter', `${SAME}what another system does never moves this filter`],
    ['const filters = home.filters.map', `${SAME}another filter’s printed limit never moves this one`],
    ["record.kind !== 'service-done'", `${TYPES}; a service has no light`],
    ["record.kind === 'service-done'", `${TYPES}; a service has no light`],
  ],
  'lib/core/filter.ts': [
    ['from + 1', `${SAME}the search begins two days earlier, where nothing is full yet`],
    ['const last = grams(limit - 1)', `${SAME}the limit is taken where the filter fills on it or the day after`],
    ['last - start < full', `${SAME}only where the last gram is exactly the last that fits`],
    ['const ownEnd =', `${SAME}beyond the measured days the shared table and the loop find the same day`],
    [
      'for (; day <= to && day < ownEnd',
      `${SAME}beyond the measured days the shared table and the loop find the same day`,
    ],
    ['return day > to ? to', `${SAME}the caller takes the earlier of this day and the due day`],
    ['if (history.looks.length > 0)', `${SAME}no looks give no looks; it spares the work`],
    ['if (look.light === undefined', `${SAME}a look without light, or of another time, is passed over below`],
    ['?? f', GUARD],
  ],
  'lib/core/measured.ts': [
    ['if (readings.length === 0 && weather.size === 0)', `${SAME}the next question says it too; it spares the work`],
    ["r.source === 'bill'", `${TYPES}; a bill has no such hours`],
    ['if (modelled < figures.evenSpreadBelowHours', `${SAME}only at exactly one hour`],
    ['const daily: Daily = new Array(count)', `${SAME}a list without length is filled by its days all the same`],
    ['modelled < figures.evenSpreadBelowHours', `${SAME}only at exactly one hour`],
    [
      'if (hours === null || day > on',
      `${SAME}no reading lies after the day of the plan but through a file of tomorrow`,
    ],
    ['const share = needed > blowerHours', `${SAME}where both are equal the share is 1`],
  ],
  'lib/core/plan.ts': [
    ['for (; i > 0 && byDueDay', `${SAME}no two items have one day, task and subject`],
    ['if (a.due !== b.due)', `${SAME}they differ, so that neither is equal`],
    ['if (kinds.length > 0)', `${SAME}no season gives no day either`],
    ['return a < b ? -1', '_open_: two tasks of one day are entered in their order already'],
  ],
  'lib/core/runtime.ts': [['if (both > FULL_DAY)', `${SAME}at exactly 24 hours the scale is 1`]],
  'lib/core/season.ts': [
    ["const key = kind === 'heating'", `${SAME}any two keys that differ serve`],
    ['if (season === undefined)', `${SAME}what is kept only spares the work`],
    ['const isSeason =', `${SAME}only where a fortnight has exactly an hour a day`],
  ],
  'lib/core/system-days.ts': [
    ['home.weather ?? []', `${TYPES}; a spell that is no spell is passed over`],
    ['home.readings.length === 0', `${SAME}without readings nothing is measured; it spares the work`],
    ['ownDaysEnd: measured', `${SAME}beyond the measured days the shared table and the loop find the same day`],
    ['if (f.loading === null || f.share === null)', `${SAME}such a filter catches nothing, and nobody asks how much`],
    ['if (measured) ends.push', `${SAME}a stretch more or less of days that do not differ`],
    ['for (let i = 0; i < count; i++)', `${SAME}one sum more at the end, which nobody reads`],
    ['const base: Through = air.fan.total', `${SAME}adding nothing; it spares the work`],
  ],
  'lib/core/year.ts': [
    ['i.latest >= dayText(from)', `${SAME}what is planned is never over before the drawing begins`],
    ['i.earliest <= dayText(end)', '_open_: no window that opens on the very last day is tried'],
  ],
  'lib/core/weather.ts': [['if (cool === 0 && heat === 0)', `${SAME}a spell of no hours raises no day’s hours`]],
  'lib/core/yearly-service.ts': [
    ['if (usual < figures.seasonHours', `${SAME}only for a year of exactly one hour`],
    [
      'return firstDay(last + 1',
      `${SAME}no hours have run on the day of the service itself; or the window’s end is due anyhow`,
    ],
  ],
  'lib/guide/booking.ts': [],
  'lib/guide/brief.ts': [
    ['if (node === null ||', `${TYPES}; a step that was taken has its node`],
    ["node.kind === 'check'", `${SAME}only a check has a line that begins with “Do:”`],
    ['const [first = text, second]', `${SAME}our sentences are a single space apart`],
    ['.test(first) ? second', `${SAME}the first sentence ends with its only full stop`],
    ['family.say.replace', `${SAME}the families’ sentences have one full stop, at the end`],
  ],
  'lib/guide/place.ts': [
    ["if (found.kind !== 'broken' ||", `${SAME}without events the second replay is the first; it spares the work`],
    ['replay({ flow, facts: remembered([])', `${SAME}an event that is none changes nothing`],
  ],
  'lib/guide/replay.ts': [
    ["if (here?.kind !== 'outcome')", `${SAME}an outcome has no answers that could be asked for again`],
    ['taken.length > 0', `${SAME}before a first answer the first question is a hazard already`],
    ['[gas, presence, ...others].filter', `${TYPES}; every flow asks all of them, as the checker proves`],
    ['marks[fact.id] = value !== undefined', `${SAME}no list of values holds “undefined”`],
  ],
  'lib/guide/walk.ts': [
    ['if (when === undefined)', `${SAME}a loop over nothing holds too`],
    ['if (value === undefined ||', `${SAME}no list of values holds “undefined”`],
    ['answer.sets === undefined', `${SAME}spreading nothing adds nothing; it spares a copy`],
    ['for (let passed = 0', `${SAME}one round more or less before a circle is refused`],
    ['if (node === undefined)', GUARD],
  ],
}
