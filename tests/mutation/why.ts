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
  'lib/core/unit-merge.ts': [
    ['const known: Assumed[] = []', TYPES],
    ['filter !== undefined) records.push', `${TYPES}; a group that names a day is no empty one, and has its filter`],
  ],
  'lib/core/unit-sheet.ts': [
    ['household.filters.slice(0, SHEET_FILTERS)', `${SAME}the sheet has no column for a fifth filter`],
    ["record.kind === 'service-done' && record.subject", `${TYPES}; a filter’s record has no subject`],
  ],
  'lib/core/weather.ts': [['if (cool === 0 && heat === 0)', `${SAME}a spell of no hours raises no day’s hours`]],
  'lib/core/yearly-service.ts': [
    ['if (usual < figures.seasonHours', `${SAME}only for a year of exactly one hour`],
    [
      'return firstDay(last + 1',
      `${SAME}no hours have run on the day of the service itself; or the window’s end is due anyhow`,
    ],
  ],
  'lib/guide/brief.ts': [
    ['if (node === null ||', `${TYPES}; a step that was taken has its node`],
    ['taken', `${SAME}a hazard is denied by “no” and by nothing else in these walks`],
    [".filter((step) => step.answer === 'no')", '_open_: a hazard that was met and denied later is told as denied'],
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
    ['hazardSeen: seen ===', `${SAME}where the flow has the mark it is one of the three`],
    ['node.answers?.find((answer) => answer.id === id)', `${TYPES}; an answer that was taken has its words`],
    ['return node.answers?.some', TYPES],
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
  'lib/core/belief.ts': [
    ['if (look.expected <', '_open_: a look at a filter too fresh to tell is tried through the plan only'],
    ['const weight = logWeight.map', `${SAME}a factor that falls out where the weights are made to sum to 1`],
    ['const chances =', '_open_: its test is one that the run leaves out'],
    ['const likelihood =', '_open_: its test is one that the run leaves out'],
    ['addLogLikelihood(likelihood', '_open_: its test is one that the run leaves out'],
    ['return [light,', '_open_: its test is one that the run leaves out'],
  ],
  'lib/core/day.ts': [
    ['if (!/^', `${SAME}a longer or shorter text is no day by its value either`],
    ['if (known !== undefined)', `${SAME}what is kept only spares the work`],
    ['if (days === undefined)', `${SAME}what is kept only spares the work`],
    ['if (day === undefined)', `${SAME}what is kept only spares the work`],
    ['if (days.size > 10_000)', `${SAME}what is kept only spares the work`],
    ['return a < b', `${SAME}a sort asks only which comes first`],
  ],
  'lib/core/due.ts': [['return source === undefined', `${SAME}a source that is undefined is written nowhere`]],
  'lib/core/history.ts': [
    ['const done: Done[] = []', TYPES],
    ['if (history.changes.length > 1)', `${SAME}one or none is in order; it spares the work`],
    ['if (history.looks.length > 1)', `${SAME}one or none is in order; it spares the work`],
    ['return left < right', `${SAME}a sort asks only which comes first, and two alike may stand either way`],
  ],
  'lib/core/modelled-hours.ts': [['readings: []', `${TYPES}; a reading of no system is nobody’s`]],
  'lib/core/nominal-size.ts': [
    ['const second =', '_open_: a second size that cannot be a filter is not tried'],
    ['if (isWhole(', '_open_: a size of which one side alone is whole is not tried here'],
    ['return like.widthIn <=', `${SAME}a square turned is the same`],
    ['return Math.abs(inches - Math.round', `${SAME}only at exactly a tape’s error`],
    ['return over >', '_open_: the edges of doubt are not tried to the hundredth of an inch'],
    [
      "return (['widthIn', 'heightIn']",
      '_open_: a printed size far under its nominal one on one side only is not tried',
    ],
  ],
  'lib/core/pooling.ts': [
    ['told: ', '_open_: what others told is shown on one page and not judged by a test'],
    ['const greatest =', `${SAME}a factor that falls out in the mean, as long as no number overflows`],
    ['const weights =', '_open_: the same factor the wrong way, within what the tests can see'],
  ],
  'lib/core/zone.ts': [
    ['if (!format)', `${SAME}what is kept only spares the work`],
    ['const [least, most] =', `${SAME}where a day was left out, its hours came later than those of UTC`],
    ['const near =', `${SAME}it begins the search nearer; where it begins too late it begins at the first moment`],
    [
      'for (let at = shown(near)',
      `${SAME}it begins the search nearer; where it begins too late it begins at the first moment`,
    ],
  ],
  'lib/guide/address.ts': [
    ['if (at === null ||', `${SAME}“null” is no number`],
    ['if (count === null ||', `${SAME}null is no number in words`],
    ['STEP.exec(part) ?? []', `${SAME}a list of one leaves the answers undefined too`],
    ['if (node === undefined ||', `${SAME}the pattern gives all three or none`],
  ],
  'lib/guide/episode.ts': [
    ['if (lastFault !== null && addYears', `${SAME}what is unknown is made unknown`],
    ["case 'trouble-began':", `${SAME}the last case ends by itself`],
    ['const refillsOn =', `${SAME}what is spent was a fault, so there is a last one`],
    ['if (refillsOn !== null', `${SAME}null comes before no day of text`],
  ],
  'lib/guide/finder-address.ts': [
    ['if (answers.length === 0)', `${SAME}without answers there is nothing old; the screen is the first`],
    ['const began =', '_open_: a time with other letters beside it is refused by being no number'],
    ["state.screen.kind === 'referral'", `${SAME}only a referral has a severity`],
    ['replayFinder(finder, [])', `${SAME}an answer that fits nothing is left aside`],
  ],
  'lib/guide/finder-replay.ts': [
    ["if (screen.kind !== 'question'", `${SAME}what is no question has no answer that fits`],
    ['id = (value === undefined', `${SAME}no fork leads on from “undefined”`],
  ],
  'lib/guide/finder-start.ts': [
    ['return isOpen ||', `${SAME}what tripped was spent, and what is spent has a day on which it fills again`],
  ],
  'lib/guide/phone-memory.ts': [
    ['ENTRY.exec(entry) ?? []', `${SAME}a list of one leaves the kind undefined too`],
    ['if (!kind || !minute', `${SAME}the pattern gives all three or none`],
  ],
  'lib/guide/startup-watcher.ts': [
    ['} else if (from !== null', '_open_: only a bang would reach it, which ends the watch before'],
  ],
  'lib/guide/watch-address.ts': [
    ['?? []', `${SAME}a list of one leaves the event undefined too`],
    ['if (event === undefined', `${SAME}undefined is no event of the list`],
  ],
  'lib/guide/which-filter.ts': [
    ['(home?.filters ?? [])', '_open_: a home without a chosen system, and no home, are tried by pages'],
  ],
  'lib/core/cycle.ts': [
    ['for (let i = 0; i < 365; i++)', `${SAME}a sum more at the end, which nobody reads`],
    ['if (from >= to)', `${SAME}where both are equal the search has no step to make`],
    ['for (let step = 0', `${SAME}how many straight steps are made, not where they end`],
    ['const share =', `${SAME}how near the next step comes, not where the search ends`],
    ['const middle =', `${SAME}how near the next step comes, not where the search ends`],
  ],
  'lib/core/rounds.ts': [
    ['{ isClosed = () => false', `${SAME}undefined is as false`],
    ['while (to > from && isClosed(to))', `${SAME}the first day is open, so the search ends at it`],
  ],
  'lib/core/season-tasks.ts': [
    ['const worn = firstDay(base + 1', `${SAME}no hours have run on the day of the look itself`],
    [
      'const due = firstDay(base + 1',
      `${SAME}on the day itself no hours have run; a day after the season is refused below`,
    ],
    [
      'for (let y = year - 1; y <=',
      `${SAME}the year after next is reached only where a leap day makes its season long enough`,
    ],
    [
      'if (!season || season.end <= from',
      `${SAME}it passes over what cannot come first; a day out of its season is refused`,
    ],
  ],
}
