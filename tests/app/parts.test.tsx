import { describe, expect, test } from 'vitest'
import { pages } from '../support/parts-page'

describe.each(Object.entries(pages))('the page “%s”', (_, render) => {
  const html = render()
  const body = html.slice(html.indexOf('<body>'))

  test('holds under a strict Content-Security-Policy: no inline style, no script, no handler', () => {
    expect(body).not.toMatch(/\sstyle=|<script|\son[a-z]+=/)
  })

  test('asks no other host for anything', () => {
    expect(html.match(/(?:src|href)="https?:|url\(["']?https?:/g)).toBeNull()
  })

  test('has one first heading and skips no level', () => {
    const levels = [...body.matchAll(/<h([1-6])/g)].map(([, level]) => Number(level))
    expect(levels.filter((level) => level === 1)).toHaveLength(1)
    for (const [index, level] of levels.entries()) expect(level - (levels[index - 1] ?? 0)).toBeLessThanOrEqual(1)
  })

  test('uses no id twice', () => {
    const ids = [...body.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id)
    expect(ids).toHaveLength(new Set(ids).size)
  })
})

describe('the due list', () => {
  test('puts what is overdue first, and says so in words', () => {
    const html = pages.due?.() ?? ''
    const order = ['Overdue', 'Due now', 'Within two weeks', 'Later'].map((state) => html.indexOf(`>${state}<`))
    expect(order).toEqual([...order].sort((a, b) => a - b))
    expect(order[0]).toBeGreaterThan(0)
    expect(html).toContain('3 weeks overdue')
  })

  test('says size, kind, place, arrow, window and look day of a filter', () => {
    const text = (pages.due?.() ?? '').replace(/<[^>]+>/g, '')
    for (const words of [
      'Change the filter, in the wall grille',
      '16 × 25 × 1, pleated, MERV 8; arrow into the wall',
      'between 7 November and 5 December',
      'lamp on Friday 27 November',
    ]) {
      expect(text).toContain(words)
    }
  })

  test('an empty home is told so', () => {
    expect(pages.nothing?.()).toContain('Nothing is due')
  })
})

describe('the workings', () => {
  test('name each fact with the days it moves, strongest first, and each figure’s mark in words', () => {
    const text = (pages.why?.() ?? '').replace(/<[^>]+>/g, '')
    expect(text).toContain('the two pets: 23 days earlier')
    expect(text).toContain('MERV 8: 5 days later')
    expect(text.indexOf('the two pets')).toBeLessThan(text.indexOf('the carpet'))
    expect(text).toContain('common practice in the trade, no source')
    expect(text).toContain('2 November')
    expect(text).toContain('11 December')
  })
})

describe('the year', () => {
  test('is drawn twice and told once more as a table', () => {
    const html = pages.year?.() ?? ''
    expect(html.match(/<svg class="year-(lying|running)"/g)).toHaveLength(2)
    expect(html).toContain('<table>')
    expect(html).toContain('Change the filter (expected)')
  })
})
