import { beforeEach } from 'vitest'
import { TESTS } from './left-out'

// A kept worker still has the mutant before this one: the files of tests are read without any.
const { __stryker__: mutants } = globalThis as { __stryker__?: { activeMutant?: string } }
if (mutants) mutants.activeMutant = undefined

beforeEach(({ task, skip }) => {
  const name = (task.fullTestName ?? task.name).replaceAll(' > ', ' ')
  if (TESTS.some((part) => name.includes(part))) skip()
})
