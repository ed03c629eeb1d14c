import { describe, test } from 'vitest'
import type { Assumed } from '@/lib/core/household'
import { type Case, changedOn, den, expectCase, hall, home, size, two } from '../support/a-let-home'

describe('of filters, a row', () => {
  test.each<[string, Case]>([
    [
      'leaves those alone for which a sheet has no room',
      {
        of: { filters: [hall, den, { ...den, id: 'f3' }, { ...den, id: 'f4' }, { ...den, id: 'f5' }] },
        says: { filters: [{}, {}, {}, { merv: 4 }] },
        becomes: { filters: [hall, den, { ...den, id: 'f3' }, { ...den, id: 'f4', merv: 4 }, { ...den, id: 'f5' }] },
        changes: ['filter 4 MERV 4'],
      },
    ],
    [
      'tells filters apart by their order and changes what it says of each',
      {
        says: {
          filters: two(
            { place: 'floor-grille', merv: 11, changed: '2026-09-20' },
            { nominal: size(20, 24, 1), medium: 'washable', changed: '2026-11-02' },
          ),
        },
        becomes: {
          filters: [
            { ...hall, place: 'floor-grille', merv: 11 },
            { ...den, nominal: size(20, 24, 1), medium: 'washable' },
          ],
          assumed: home.assumed?.slice(0, 2) as Assumed[],
        },
        records: [changedOn('2026-11-02', 'den')],
        changes: [
          'filter 1 place floor-grille instead of wall-grille',
          'filter 1 MERV 11 instead of 8',
          'filter 2 size 20x24x1 instead of 20x20x1',
          'filter 2 kind washable',
          'filter changed 2026-11-02',
        ],
      },
    ],
    [
      'adds a filter after those that stand, with what is not known of it',
      {
        says: { filters: [{}, {}, { place: 'wall-grille', changed: '2026-09-20' }, { medium: 'media', merv: 13 }] },
        becomes: {
          filters: [
            hall,
            den,
            { id: 'wall-grille', system: 'main', place: 'wall-grille', nominal: size(16, 25, 1), medium: 'pleated' },
            {
              ...{ id: 'furnace-slot', system: 'main', place: 'furnace-slot', nominal: size(16, 25, 1) },
              ...{ medium: 'media', merv: 13 },
            },
          ],
          assumed: [
            ...(home.assumed as Assumed[]),
            { code: 'filter-size', subject: 'wall-grille' },
            { code: 'filter-medium', subject: 'wall-grille' },
            { code: 'filter-place', subject: 'furnace-slot' },
            { code: 'filter-size', subject: 'furnace-slot' },
          ],
        },
        records: [changedOn('2026-09-20', 'wall-grille')],
        changes: ['filter 3 16x25x1', 'filter 4 16x25x1', 'filter changed 2026-09-20'],
      },
    ],
    [
      'records a change of the day of a look',
      {
        says: { filters: two({}, { changed: '2026-09-21' }) },
        records: [changedOn('2026-09-21', 'den')],
        changes: ['filter changed 2026-09-21'],
      },
    ],
    [
      'may leave filters out between, where they stand',
      {
        says: { filters: [{}, { merv: 4 }] },
        becomes: { filters: [hall, { ...den, merv: 4 }] },
        changes: ['filter 2 MERV 4'],
      },
    ],
    [
      'may not leave one out that there is none of',
      {
        of: { filters: [hall] },
        says: { filters: [{}, {}, { nominal: size(10, 10, 1), place: 'floor-grille', medium: 'media' }] },
        becomes: {
          filters: [
            hall,
            { id: 'floor-grille', system: 'main', place: 'floor-grille', nominal: size(10, 10, 1), medium: 'media' },
          ],
        },
        changes: ['filter 3 10x10x1'],
        clashes: ['has filter 3 but no filter 2: write it as filter 2'],
      },
    ],
  ])('%s', (_, one) => expectCase(one))
})
