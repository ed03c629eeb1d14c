import { parseArgs } from 'node:util'
import type { MonthlyClimate } from '@/lib/core/household'
import { fahrenheitFrom } from '@/lib/forms/quantities'
import { parseWeatherFile } from '@/lib/forms/weather-file'
import { readInput, unreadable } from './read-input'
import { endPlainly, Refused } from './refused'

const USAGE = `climate -- FILE|- [--celsius] --heating-design DEGREES --cooling-design DEGREES
  the climate of a household file, from a year or more of days: a table with the headings date, min, max
  --celsius         the file and both design temperatures are in °C, not °F
  --heating-design  colder than this in 1 hour of 100; --cooling-design: warmer than this in 1 hour of 100.
                    Daily figures do not tell them: take those of the nearest station.`

await endPlainly(async () => {
  const { file, unit, heatingDesignF, coolingDesignF } = read(process.argv.slice(2))
  const name = file === '-' ? 'standard input' : file
  const bytes = await readInput(file, process.stdin).catch((error) => {
    throw new Refused(`${name}: ${unreadable(error)}`)
  })
  const found = parseWeatherFile(bytes, unit)
  if (!found.ok) throw new Refused(found.faults.map(({ path, say }) => `${path || name}: ${say}`).join('\n'))
  const { hdd65, cdd65 } = found.climate
  const climate: MonthlyClimate = {
    ...{ kind: 'monthly', hdd65: hdd65.map(tenth), cdd65: cdd65.map(tenth) },
    ...{ heatingDesignF: tenth(heatingDesignF), coolingDesignF: tenth(coolingDesignF) },
  }
  return JSON.stringify({ climate }, null, 2)
})
// Standard input may still be open where it was too long to be read to its end.
process.stdin.destroy()

function read(args: string[]) {
  try {
    const text = { type: 'string' } as const
    const { values, positionals } = parseArgs({
      ...{ args, allowPositionals: true },
      options: { celsius: { type: 'boolean' }, 'heating-design': text, 'cooling-design': text },
    })
    const [file, ...more] = positionals
    if (file === undefined || more.length > 0)
      throw new Error('Name one file of daily weather, or - for standard input.')
    const unit = values.celsius ? ('C' as const) : ('F' as const)
    const design = (name: 'heating-design' | 'cooling-design') => {
      const degrees = Number(values[name] || Number.NaN)
      if (!Number.isFinite(degrees)) throw new Error(`--${name} must be a temperature in °${unit}.`)
      return unit === 'C' ? fahrenheitFrom(degrees) : degrees
    }
    return { file, unit, heatingDesignF: design('heating-design'), coolingDesignF: design('cooling-design') }
  } catch (error) {
    throw new Refused(`${(error as Error).message}\n${USAGE}`)
  }
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10
}
