import { tables } from '@/content/tables'
import type { Fault } from '@/lib/core/fault'
import { sizeInWords } from '@/lib/core/filter-words'
import type { NominalSize } from '@/lib/core/household'
import { nominalFromMeasured, nominalFromPrinted } from '@/lib/core/nominal-size'
import { parseSize, SIZE_FIELDS, type TypedSize } from '@/lib/forms/size-form'

export type ReadSize =
  | { kind: 'read'; nominal: NominalSize; text: string; notes: string[] }
  | { kind: 'refused'; faults: Fault[] }

/** What was typed as the size to buy, with what is worth knowing about it, or every fault. */
export function readSize(typed: TypedSize): ReadSize {
  const parsed = parseSize(typed)
  if (!parsed.ok) return { kind: 'refused', faults: parsed.faults }
  const nominalFrom = typed.from === 'measured' ? nominalFromMeasured : nominalFromPrinted
  const answer = nominalFrom(parsed.value, tables.commonSizes)
  if (answer.kind === 'refused') {
    return { kind: 'refused', faults: answer.faults.map(({ field, say }) => ({ path: SIZE_FIELDS[field], say })) }
  }
  const { nominal, notes } = answer
  return { kind: 'read', nominal, text: sizeInWords(nominal), notes: notes.map(({ say }) => say) }
}
