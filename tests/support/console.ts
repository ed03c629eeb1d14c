import { afterEach, beforeEach, type MockInstance, vi } from 'vitest'

let spy: MockInstance<typeof console.error>
let expected: RegExp[] = []

/** Lets this test write a matching line to `console.error`; it fails if no such line comes. */
export function expectConsoleError(pattern: RegExp): void {
  expected.push(pattern)
}

beforeEach(() => {
  expected = []
  spy = vi.spyOn(console, 'error').mockImplementation(() => {})
})

afterEach(() => {
  const lines = spy.mock.calls.map((parts) => parts.map(String).join(' '))
  spy.mockRestore()
  const surplus = lines.filter((line) => !expected.some((pattern) => pattern.test(line)))
  if (surplus.length > 0) throw new Error(`unexpected console.error:\n${surplus.join('\n')}`)
  const missing = expected.filter((pattern) => !lines.some((line) => pattern.test(line)))
  if (missing.length > 0) throw new Error(`console.error did not say ${missing.join(', ')}`)
})
