import { parseArgs } from 'node:util'
import { type Day, isDay } from '@/lib/core/day'

export interface PlanArguments {
  /** A path, or `-` for standard input. */
  file: string
  /** Today in each household's own zone where it is left out. */
  on: Day | undefined
  asText: boolean
  /** 1, or 1.1: every system starts from what the file's other systems told of their dust. */
  model: (typeof MODELS)[number]
}

const MODELS = ['1', '1.1'] as const

export const USAGE = 'usage: npm run --silent plan -- FILE|- [--on YYYY-MM-DD] [--model 1|1.1] [--text]'

/** The command's arguments, or what is wrong with them in one line. */
export function planArguments(
  args: readonly string[],
): { ok: true; value: PlanArguments } | { ok: false; say: string } {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { on: { type: 'string' }, model: { type: 'string' }, text: { type: 'boolean' } },
    })
    const [file, ...more] = positionals
    if (file === undefined) return { ok: false, say: 'name a household file, or - for standard input' }
    if (more.length > 0) return { ok: false, say: `name one household file, not ${positionals.length}` }
    if (values.on !== undefined && !isDay(values.on)) {
      return { ok: false, say: `--on must be a day written like 2026-11-25, but is ${JSON.stringify(values.on)}` }
    }
    const model = MODELS.find((one) => one === (values.model ?? '1'))
    if (!model) return { ok: false, say: `--model must be 1 or 1.1, but is ${JSON.stringify(values.model)}` }
    return { ok: true, value: { file, on: values.on, asText: values.text ?? false, model } }
  } catch (error) {
    return { ok: false, say: (error as Error).message.split('\n')[0] ?? 'wrong arguments' }
  }
}
