import { fleschKincaid } from 'flesch-kincaid'
import { syllable } from 'syllable'
import { sentences } from '@/lib/guide/words'

/** Flesch-Kincaid grade of a text. Digits are counted by how they are said: "911" has five syllables. */
export function readingGrade(text: string): number {
  const all = sentences(text)
  const words = all.flatMap((sentence) => sentence.split(/[\s/]+/)).filter((word) => /[a-z0-9]/i.test(word))
  if (words.length === 0) return 0
  return fleschKincaid({
    sentence: all.length,
    word: words.length,
    syllable: words.reduce((sum, word) => sum + spoken(word), 0),
  })
}

function spoken(word: string): number {
  if (word.includes('{emergency}')) return 5
  const digits = word.replace(/\D/g, '').length
  return digits > 0 ? Math.min(digits, 3) : Math.max(1, syllable(word))
}
