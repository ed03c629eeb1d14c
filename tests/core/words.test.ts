import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dayText } from '@/lib/core/day'
import {
  awayInWords,
  dateInWords,
  dayInWords,
  dayParts,
  durationInWords,
  shortDate,
  spanInWords,
} from '@/lib/core/day-words'
import {
  arrowInWords,
  inches,
  mediumInWords,
  placeInWords,
  sizeInWords,
  sizeTextInWords,
} from '@/lib/core/filter-words'
import { FILTER_PLACES, LIGHTS, TASKS } from '@/lib/core/household'
import { BASES } from '@/lib/core/plan-types'
import { subjectInWords } from '@/lib/core/subject-words'
import { MARKS } from '@/lib/core/tables'
import {
  airflowInFull,
  airflowInWords,
  areaInWords,
  heightInWords,
  hoursInWords,
  numberInWords,
  percentInWords,
  pressureInWords,
  roughly,
  temperatureInWords,
  velocityInWords,
} from '@/lib/core/unit-words'
import {
  basisInWords,
  doerInWords,
  lightInWords,
  markInWords,
  peopleInWords,
  stateInWords,
  taskDoneInWords,
  taskInWords,
} from '@/lib/core/words'
import { wrenfield } from '../support/plan-fixtures'

const anyDay = fc.integer({ min: -25_000, max: 47_000 }).map(dayText)

describe('days in words', () => {
  test('a day of this year goes without its year, any other with it', () => {
    expect(dayInWords('2026-11-28', '2026-11-25')).toBe('Saturday 28 November')
    expect(dayInWords('2027-03-20', '2026-11-25')).toBe('Saturday 20 March 2027')
    expect(dateInWords('2026-11-28')).toBe('28 November 2026')
    expect(shortDate('2026-09-12')).toBe('12 Sep')
  })

  test('a day taken apart has its weekday, date, month and year', () => {
    expect(dayParts('2026-11-28')).toEqual({ weekday: 'Saturday', date: 28, month: 'November', year: 2026 })
    expect(dayParts('1969-07-20')).toEqual({ weekday: 'Sunday', date: 20, month: 'July', year: 1969 })
  })

  test('weekdays agree with the platform calendar, before 1970 too', () => {
    fc.assert(
      fc.property(anyDay, (day) => {
        const weekday = new Date(`${day}T00:00:00Z`).toLocaleDateString('en-US', { weekday: 'long', timeZone: 'UTC' })
        expect(dayInWords(day)).toMatch(new RegExp(`^${weekday} `))
      }),
    )
  })

  test.each([
    ['2026-11-25', 'today'],
    ['2026-11-26', 'tomorrow'],
    ['2026-11-24', 'yesterday'],
    ['2026-11-28', 'in 3 days'],
    ['2026-11-13', '12 days ago'],
    ['2026-12-30', 'in 5 weeks'],
    ['2027-03-27', 'in 4 months'],
    ['2029-11-25', 'in 3 years'],
  ])('%s is %s, seen from 25 November 2026', (day, words) => {
    expect(awayInWords(day, '2026-11-25')).toBe(words)
  })

  test('a duration changes its unit where people do', () => {
    expect([1, 20, 21, 83, 84, 729, 730, -3].map(durationInWords)).toEqual([
      ...['1 day', '20 days', '3 weeks', '12 weeks', '3 months', '24 months', '2 years', '3 days'],
    ])
  })

  test('a duration never reads as none unless it is none', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20_000 }), (days) => {
        expect(durationInWords(days)).not.toMatch(/^0 /)
      }),
    )
  })

  test('a window names the year once, where it is another year', () => {
    expect(spanInWords('2027-03-20', '2027-05-20', '2026-11-25')).toBe('between 20 March and 20 May 2027')
    expect(spanInWords('2026-12-20', '2027-01-20', '2026-11-25')).toBe('between 20 December and 20 January 2027')
    expect(spanInWords('2026-11-28', '2026-11-28', '2026-11-25')).toBe('on 28 November')
  })
})

describe('filters in words', () => {
  test('a size reads as it is printed, eighths as fractions', () => {
    expect(sizeInWords({ widthIn: 16, heightIn: 25, depthIn: 1 })).toBe('16 × 25 × 1')
    expect(sizeInWords({ widthIn: 15.5, heightIn: 24.5, depthIn: 0.75 })).toBe('15½ × 24½ × ¾')
    expect(sizeTextInWords('20x25x4.25')).toBe('20 × 25 × 4¼')
    expect(sizeInWords({ widthIn: 19.875, heightIn: 20, depthIn: 1 })).toBe('19⅞ × 20 × 1')
    expect([0, 0.125, 1, 15.51].map(inches)).toEqual(['0', '⅛', '1', '15.51'])
  })

  test('the arrow points with the air, away from the room, and a screen has none', () => {
    for (const place of FILTER_PLACES) {
      if (place.endsWith('-grille')) expect(arrowInWords(place)).toMatch(/into the (wall|ceiling|floor)$/)
    }
    expect(arrowInWords('ductless-head')).toBeNull()
  })

  test('a medium goes without a rating that nobody knows', () => {
    expect(mediumInWords('pleated', 8)).toBe('pleated, MERV 8')
    expect(mediumInWords('screen', null)).toBe('screen')
    expect(mediumInWords('media')).toBe('deep pleated media')
  })

  test('a place completes a sentence, each with words of its own', () => {
    const places = FILTER_PLACES.map(placeInWords)
    expect(placeInWords('wall-grille')).toBe('in the wall grille')
    expect(places.every((words) => /^in the \w/.test(words))).toBe(true)
    expect(new Set(places).size).toBe(places.length)
  })
})

describe('figures in words', () => {
  test('metric homes see metric figures', () => {
    expect(temperatureInWords(70, 'us')).toBe('70 °F')
    expect(temperatureInWords(70, 'metric')).toBe('21 °C')
    expect(temperatureInWords(-40, 'metric')).toBe('−40 °C')
    expect(airflowInWords(1080, 'us')).toBe('1,080 cfm')
    expect(airflowInWords(1000, 'metric')).toBe('1,699 m³/h')
    expect(airflowInFull(1080, 'us')).toBe('1,080 cubic feet of air a minute (cfm)')
    expect(airflowInFull(1000, 'metric')).toBe('1,699 cubic metres of air an hour (m³/h)')
    expect(pressureInWords(0.15, 'us')).toBe('0.15 inches of water')
    expect(pressureInWords(0.15, 'metric')).toBe('37 pascals')
    expect(velocityInWords(432, 'us')).toBe('432 feet a minute')
    expect(velocityInWords(432, 'metric')).toBe('2.2 metres a second')
    expect(areaInWords(400, 'us')).toBe('2.8 square feet')
    expect(areaInWords(400, 'metric')).toBe('0.26 square metres')
    expect(heightInWords(5280, 'us')).toBe('5,280 feet')
    expect(heightInWords(5280, 'metric')).toBe('1,609 metres')
  })

  test('numbers keep their sign and their thousands', () => {
    expect(numberInWords(1234567.4)).toBe('1,234,567')
    expect(numberInWords(-0.2)).toBe('0')
    expect(numberInWords(-1234.56, 1)).toBe('−1,234.6')
    expect(numberInWords(0)).toBe('0')
    expect([0.154, 9.99, 10, 99.94, 100, -99.94, -1080.4].map(roughly)).toEqual([
      ...['0.15', '9.99', '10.0', '99.9', '100', '−99.9', '−1,080'],
    ])
    expect(percentInWords(0.62)).toBe('62\u00a0%')
    expect(hoursInWords(1)).toBe('1 hour')
    expect(hoursInWords(7.4)).toBe('7.5 hours')
    expect(hoursInWords(9.8)).toBe('10 hours')
    expect(hoursInWords(10.4)).toBe('10 hours')
    expect(hoursInWords(300)).toBe('300 hours')
  })
})

describe('names in words', () => {
  test('every task, basis and mark has words of its own', () => {
    for (const words of [
      TASKS.map(taskInWords),
      TASKS.map(taskDoneInWords),
      BASES.map(basisInWords),
      MARKS.map(markInWords),
    ]) {
      expect(new Set(words).size).toBe(words.length)
      expect(words.every((each) => each.length > 3)).toBe(true)
    }
    expect(markInWords('S?')).toBe('published standard, regulation or handbook, from memory')
    expect((['overdue', 'due', 'soon', 'later'] as const).map(stateInWords)).toEqual([
      ...['Overdue', 'Due now', 'Within two weeks', 'Later'],
    ])
    expect(LIGHTS.map(lightInWords).map((words) => words.split(' ').at(-1))).toEqual(['over', 'places', 'through'])
    expect(peopleInWords({ people: 1, pets: 0 })).toBe('1 person')
    expect(peopleInWords({ people: 3, pets: 2 })).toBe('3 people, 2 pets')
    expect([doerInWords('resident'), doerInWords('technician')]).toEqual(['you', 'a licensed technician'])
  })

  test('two filters of a kind are told apart, one alone is not burdened', () => {
    expect(subjectInWords(wrenfield, 'hall')).toBe('wall grille')
    expect(subjectInWords(wrenfield, 'main')).toBe('Main system')
    expect(subjectInWords(wrenfield, 'co1')).toBe('carbon monoxide alarm')
    expect(subjectInWords(wrenfield, 'gone')).toBe('gone')
    const [hall] = wrenfield.filters
    if (!hall) throw new Error('the fixture has a filter')
    const two = { ...wrenfield, filters: [hall, { ...hall, id: 'den', nominal: { ...hall.nominal, widthIn: 20 } }] }
    expect(subjectInWords(two, 'den')).toBe('wall grille, 20 × 25 × 1')
    expect(subjectInWords({ ...two, filters: [hall, { ...hall, id: 'den' }] }, 'den')).toBe('wall grille, “den”')
  })
})
