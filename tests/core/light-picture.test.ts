import { describe, expect, test } from 'vitest'
import { figures } from '@/content/figures'
import { LIGHT_PICTURE } from '@/content/light-picture'
import { LIGHTS, type Light } from '@/lib/core/household'
import { judge, type LightReading, type LightReference, readLightPicture } from '@/lib/core/light-picture'
import { linearOf } from '@/lib/core/linear-light'
import { type LightScene, PLAIN_SCENE, randomOf, renderLightScene } from '../support/light-scene'

function read(change: Partial<LightScene>, reference: LightReference = 'new-filter'): LightReading {
  const scene = { ...PLAIN_SCENE, ...change }
  return readLightPicture(renderLightScene(scene), { reference, side: scene.side }, LIGHT_PICTURE)
}

function codes(reading: LightReading): string[] {
  return reading.kind === 'refused' ? reading.faults.map((fault) => fault.code) : []
}

function ratioIn(reading: LightReading): number {
  if (reading.kind === 'refused') throw new Error(`refused: ${codes(reading).join(', ')}`)
  return reading.ratio
}

// exp(−k·x) with k = ln 4: the borders at x = 0.4 and 0.8.
const CLEAR_FROM = 0.25 ** 0.4
const DARK_TO = 0.25 ** 0.8

function trueLight(ratio: number): Light {
  return ratio > CLEAR_FROM ? 'clear' : ratio >= DARK_TO ? 'half' : 'dark'
}

// The phone that takes the picture is spared the whole table of figures, so these stand there once more.
test('the borders of a picture are those of a look', () => {
  const { clearBelowLoad, darkAboveLoad } = LIGHT_PICTURE
  expect([clearBelowLoad.value, darkAboveLoad.value]).toEqual([figures.clearBelow.value, figures.darkAbove.value])
})

describe('a fair picture', () => {
  test.each([0.05, 0.1, 0.2, 0.3, 0.45, 0.6, 0.8, 1])('of a filter that passes %d is measured within 10 %', (ratio) => {
    for (const side of ['left', 'right'] as const) {
      const found = ratioIn(read({ ratio, side }))
      expect(found).toBeGreaterThan(ratio * 0.9)
      expect(found).toBeLessThan(ratio * 1.1)
    }
  })

  test('without noise and pleats it is measured within a hundredth, and against paper so much higher', () => {
    const still = { noise: 0, pleats: 0, ratio: 0.4, lampWidth: 30 }
    const ratio = ratioIn(read(still))
    expect(ratio).toBeCloseTo(0.4, 2)
    expect(ratioIn(read(still, 'paper'))).toBeCloseTo(ratio * LIGHT_PICTURE.paperOverNew.value, 6)
  })

  test.each([
    [0.9, 'clear'],
    [0.43, 'half'],
    [0.15, 'dark'],
  ] as const)('%d is %s, and surely so', (ratio, light) => {
    const reading = read({ ratio })
    expect(reading).toMatchObject({ kind: 'read', light })
    if (reading.kind === 'read') expect(reading.sureness).toBeGreaterThan(light === 'half' ? 0.75 : 0.95)
  })

  test('in 120 pictures turned, tilted, noisy and of any exposure, 114 are read within 20 % and none is far off', () => {
    const random = randomOf(20261125)
    const between = (from: number, to: number) => from + (to - from) * random()
    let [within, readable, wrong, sure, sureAndWrong] = [0, 0, 0, 0, 0]
    for (let round = 0; round < 120; round++) {
      const ratio = Math.exp(between(Math.log(0.1), 0))
      const reading = read({
        ratio,
        side: random() < 0.5 ? 'left' : 'right',
        exposure: between(0.15, 0.75),
        ground: between(0.002, 0.012),
        noise: between(0, 6),
        rotationDegrees: between(-7, 7),
        tilt: between(-0.35, 0.35),
        gap: between(0.04, 0.09),
        lampX: between(-0.06, 0.06),
        lampWidth: between(0.8, 2),
        pleats: between(0, 0.5),
        seed: round,
        width: 200,
      })
      if (reading.kind === 'refused') continue
      readable++
      const error = Math.abs(Math.log(reading.ratio / ratio))
      if (error < Math.log(1.2)) within++
      expect(error, `true ${ratio}, read ${reading.ratio}`).toBeLessThan(Math.log(1.5))
      if (reading.light !== trueLight(ratio)) wrong++
      if (reading.sureness > 0.9) {
        sure++
        if (reading.light !== trueLight(ratio)) sureAndWrong++
      }
    }
    expect(readable).toBeGreaterThanOrEqual(114)
    expect(within).toBeGreaterThanOrEqual(114)
    expect(wrong).toBeLessThanOrEqual(6)
    expect(sure).toBeGreaterThan(60)
    expect(sureAndWrong).toBe(0)
  }, 60_000)

  test('a camera that adds contrast of its own may shift the ratio, but a plain case stays what it is', () => {
    for (const [ratio, light] of [
      [0.85, 'clear'],
      [0.12, 'dark'],
    ] as const) {
      const reading = read({ ratio, tone: 0.3, exposure: 0.5 })
      expect(reading).toMatchObject({ kind: 'read', light })
      expect(Math.abs(Math.log(ratioIn(reading) / ratio))).toBeLessThan(0.5)
    }
  })

  test('less light is never told as a cleaner filter', () => {
    const lights = [1, 0.8, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1].map((ratio) => {
      const reading = read({ ratio, noise: 0 })
      return reading.kind === 'read' ? LIGHTS.indexOf(reading.light) : -1
    })
    expect(lights).toEqual([...lights].sort())
    expect(new Set(lights)).toEqual(new Set([0, 1, 2]))
  })

  test('boxes drawn by the person are used, in a room too light to find the panels', () => {
    const scene = { ...PLAIN_SCENE, ground: 0.18, ratio: 0.4, noise: 1 }
    const box = (x: number) => ({ x: x * 240, y: 45, width: 0.24 * 240, height: 75 })
    const panels = { thisFilter: box(0.2), reference: box(0.56) }
    const picture = renderLightScene(scene)
    const reading = readLightPicture(picture, { reference: 'new-filter', side: 'left', panels }, LIGHT_PICTURE)
    expect(ratioIn(reading)).toBeGreaterThan(0.36)
    expect(ratioIn(reading)).toBeLessThan(0.45)
  })

  test('paper as the reference is reckoned to a new filter, and makes it less sure', () => {
    const [byFilter, byPaper] = [read({ ratio: 0.2 }), read({ ratio: 0.2 / 0.6 }, 'paper')]
    expect(ratioIn(byPaper)).toBeCloseTo(ratioIn(byFilter), 1)
    if (byFilter.kind === 'read' && byPaper.kind === 'read') expect(byPaper.sureness).toBeLessThan(byFilter.sureness)
    // A new filter passes more than paper: that is no mistake of sides.
    expect(codes(read({ ratio: 1.5, exposure: 0.4 }, 'paper'))).toEqual([])
  })
})

describe('a picture that cannot tell is refused with its reason', () => {
  test.each<[string, Partial<LightScene>]>([
    ['over-exposed', { exposure: 1.6 }],
    ['under-exposed', { exposure: 0.02, ground: 0.001, ratio: 0.8 }],
    ['blurred', { blur: 0.02 }],
    ['lopsided', { lampX: 0.5, lampWidth: 0.5 }],
    ['lopsided', { lampX: -0.5, lampWidth: 0.5 }],
    ['uneven-lamp', { lampX: 0, lampWidth: 0.13, exposure: 0.9 }],
    ['swapped', { ratio: 1.9, exposure: 0.4 }],
    ['no-panels', { exposure: 0 }],
    ['no-panels', { gap: 0 }],
    ['too-small', { width: 60 }],
  ])('%s: %j', (code, change) => {
    expect(codes(read(change))).toContain(code)
  })

  test('one and the same fault is found in 12 noisy, turned pictures each', () => {
    for (let seed = 0; seed < 12; seed++) {
      const change = { seed, noise: 4, rotationDegrees: (seed % 9) - 4, ratio: 0.3 + 0.03 * seed }
      expect(codes(read({ ...change, exposure: 1.6 }))).toContain('over-exposed')
      expect(codes(read({ ...change, blur: 0.02 })), `blurred ${seed}`).toContain('blurred')
      expect(codes(read({ ...change, lampX: 0.5, lampWidth: 0.5 })), `lopsided ${seed}`).toContain('lopsided')
    }
  }, 30_000)

  test('all faults are named at once', () => {
    const found = codes(read({ exposure: 1.6, blur: 0.02, lampX: 0.5, lampWidth: 0.6 }))
    expect(found).toEqual(expect.arrayContaining(['over-exposed', 'blurred']))
  })

  test('boxes outside the picture are refused, and no picture at all throws', () => {
    const picture = renderLightScene(PLAIN_SCENE)
    const box = { x: -500, y: 0, width: 40, height: 40 }
    const panels = { thisFilter: box, reference: box }
    expect(codes(readLightPicture(picture, { reference: 'paper', side: 'left', panels }, LIGHT_PICTURE))).toEqual([
      'bad-box',
    ])
    const fair = { x: 20, y: 40, width: 60, height: 60 }
    for (const one of [
      { thisFilter: fair, reference: box },
      { thisFilter: box, reference: fair },
    ]) {
      const reading = readLightPicture(picture, { reference: 'paper', side: 'left', panels: one }, LIGHT_PICTURE)
      expect(codes(reading)).toEqual(['bad-box'])
    }
    const strip = { width: 240, height: 40, rgba: picture.rgba.slice(0, 240 * 40 * 4) }
    expect(codes(readLightPicture(strip, { reference: 'paper', side: 'left' }, LIGHT_PICTURE))).toEqual(['too-small'])
    const cut = { ...picture, rgba: picture.rgba.slice(0, 100) }
    expect(() => readLightPicture(cut, { reference: 'paper', side: 'left' }, LIGHT_PICTURE)).toThrow(RangeError)
  })

  test('noise alone, and pictures of one colour, are never read as a filter', () => {
    for (let seed = 0; seed < 20; seed++) {
      const random = randomOf(seed)
      const rgba = new Uint8ClampedArray(160 * 120 * 4).map(() => (seed % 2 ? 256 * random() : 12 * seed))
      const reading = readLightPicture(
        { width: 160, height: 120, rgba },
        { reference: 'paper', side: 'left' },
        LIGHT_PICTURE,
      )
      expect(reading.kind).toBe('refused')
    }
  })
})

describe('the borders', () => {
  test('at a border both sides are equally likely, and the odds add up to one', () => {
    for (const [ratio, pair] of [
      [CLEAR_FROM, ['clear', 'half']],
      [DARK_TO, ['half', 'dark']],
    ] as const) {
      const { odds, sureness } = judge(ratio, 0.05, LIGHT_PICTURE)
      expect(odds[pair[0]]).toBeCloseTo(0.5, 5)
      expect(odds[pair[1]]).toBeCloseTo(0.5, 5)
      expect(odds.clear + odds.half + odds.dark).toBeCloseTo(1, 9)
      expect(sureness).toBeLessThan(0.6)
    }
  })

  // The standard normal distribution: 0.8413 lies below one standard deviation, 0.9772 below two.
  test.each([
    [CLEAR_FROM, 1, 'clear', 0.8413],
    [CLEAR_FROM, 2, 'clear', 0.9772],
    [CLEAR_FROM, -1, 'half', 0.8413],
    [DARK_TO, -1, 'dark', 0.8413],
    [DARK_TO, -2, 'dark', 0.9772],
    [DARK_TO, 1, 'half', 0.8413],
  ] as const)('%d, %d deviations from it, is %s with %d', (border, deviations, light, sureness) => {
    const told = judge(border * Math.exp(0.1 * deviations), 0.1, LIGHT_PICTURE)
    expect(told.light).toBe(light)
    expect(told.sureness).toBeCloseTo(sureness, 3)
  })

  test('it says how sure it is in three steps', () => {
    const say = (deviations: number) => judge(CLEAR_FROM * Math.exp(0.01 * deviations), 0.01, LIGHT_PICTURE).say
    expect(say(0.85)).toMatch(/^I am sure: clear\. It passes 58 %/)
    expect(say(0.83)).toMatch(/^I am fairly sure/)
    expect(say(0.26)).toMatch(/^I am fairly sure/)
    expect(say(0.25)).toMatch(/^It is close/)
  })

  test('linear light is that of the sRGB curve: 0.5 is 0.2140, 0.04045 is 0.0031308 (IEC 61966-2-1, from memory)', () => {
    expect(linearOf(0.5)).toBeCloseTo(0.21404, 5)
    expect(linearOf(0.04045)).toBeCloseTo(0.0031308, 6)
    expect([linearOf(0), linearOf(1)]).toEqual([0, 1])
  })

  test('every figure says its unit, mark and reason', () => {
    for (const figure of Object.values(LIGHT_PICTURE)) {
      expect(figure.mark).toBe('C')
      expect(figure.unit.length * figure.reason.length).toBeGreaterThan(0)
    }
  })
})
