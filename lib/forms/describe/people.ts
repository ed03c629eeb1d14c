import type { Assumed, Household } from '@/lib/core/household'
import { typedQuantity } from '../quantities'
import { Answers, known, one, type Read, type Typed } from './answers'

export type People = Pick<
  Household,
  'people' | 'pets' | 'petFactor' | 'smoking' | 'carpet' | 'hardWater' | 'vulnerable'
> & {
  assumed: Assumed[]
}

const YES_NO = ['yes', 'no', 'unknown'] as const

/** Who lives there and what makes dust. "Don't know" about hard water or anyone at risk counts as yes, and is named. */
export function readPeople(typed: Typed): Read<People> {
  const answers = new Answers(typed)
  const people = answers.take('people', typedQuantity({ min: 0, max: 30, unit: 'people', whole: true }))
  const pets = answers.take('pets', typedQuantity({ min: 0, max: 30, unit: 'pets with fur', whole: true }))
  const petFactor = answers.quantity('pet-factor', { min: 0.1, max: 10, unit: 'times the dust of a home without pets' })
  const hardWater = answers.choice('hard-water', YES_NO, 'Say whether the water is hard; “I don’t know” is an answer.')
  const vulnerable = answers.choice('vulnerable', YES_NO, 'Answer yes or no; “I’d rather not say” is an answer.')
  return answers.result(() => ({
    people: known(people),
    pets: known(pets),
    ...(petFactor !== undefined && { petFactor }),
    smoking: answers.isTicked('smoking'),
    carpet: answers.isTicked('carpet'),
    hardWater: hardWater !== 'no',
    vulnerable: vulnerable !== 'no',
    assumed: [
      ...(hardWater === 'unknown' ? [{ code: 'hard-water' as const, subject: '' }] : []),
      ...(vulnerable === 'unknown' ? [{ code: 'vulnerable' as const, subject: '' }] : []),
    ],
  }))
}

/** The fields as the home fills them. */
export function peopleTyped(home: Household): Typed {
  const word = (value: boolean, code: Assumed['code']) =>
    home.assumed?.some((assumed) => assumed.code === code) ? 'unknown' : value ? 'yes' : 'no'
  return {
    people: [String(home.people)],
    pets: [String(home.pets)],
    'pet-factor': one(home.petFactor),
    smoking: home.smoking ? ['yes'] : [],
    carpet: home.carpet ? ['yes'] : [],
    'hard-water': [word(home.hardWater, 'hard-water')],
    vulnerable: [word(home.vulnerable, 'vulnerable')],
  }
}
