/** The sentence that a word in an address stands for; null for words that are none of ours. */
export function sentenceOf(sentences: Readonly<Record<string, string>>, word: unknown): string | null {
  // What every object has besides, `constructor` and its like, is no word of ours.
  return typeof word === 'string' && Object.hasOwn(sentences, word) ? (sentences[word] ?? null) : null
}
