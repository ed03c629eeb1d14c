type Degrees = 'F' | 'C'

const ROOM = { F: { most: 130, such: 61 }, C: { most: 54, such: 16 } } as const

/** In which degrees an address says that the room's temperature was asked: `c` is °C, and without a word it is °F. */
export function degreesAsked(word: string | null): Degrees {
  return word === 'c' ? 'C' : 'F'
}

/**
 * A room temperature as typed, in °F: read in the degrees that were asked for, or in those that it says itself.
 * `{ ok: true, value: null }` where nothing was typed.
 */
export function parseRoom(
  text: string,
  asked: Degrees = 'F',
): { ok: true; value: number | null } | { ok: false; say: string } {
  const plain = text.trim().replace(',', '.')
  if (plain === '') return { ok: true, value: null }
  const must = `Type a number in °${asked}, such as ${ROOM[asked].such}.`
  // What is longer is none, and the expression would look at every part of it from every blank.
  if (plain.length > 40) return { ok: false, say: `This is no temperature. ${must}` }
  const [, number, unit] = /^(-?\d{1,3}(?:\.\d{1,2})?)\s*°?\s*(f|c)?$/i.exec(plain) ?? []
  if (number === undefined) return { ok: false, say: `“${plain}” is no temperature. ${must}` }
  const said = unit === undefined ? asked : /c/i.test(unit) ? 'C' : 'F'
  const degrees = said === 'C' ? (Number(number) * 9) / 5 + 32 : Number(number)
  if (degrees < -40 || degrees > ROOM.F.most)
    return { ok: false, say: `A room is between -40 and ${ROOM[said].most} °${said}. Look at the thermometer again.` }
  return { ok: true, value: Math.round(degrees * 10) / 10 }
}

export interface TypedTime {
  event: string
  second: number
}

/**
 * Times typed beside what was heard: whole seconds, or minutes and seconds as `2:30`; empty means not heard.
 * Every fault at once, by the name of its field.
 */
export function parseTimes(fields: readonly { name: string; label: string; text: string }[]): {
  times: TypedTime[]
  faults: { path: string; say: string }[]
} {
  const times: TypedTime[] = []
  const faults: { path: string; say: string }[] = []
  for (const { name, label, text } of fields) {
    const plain = text.trim()
    if (plain === '') continue
    const [, minutes, seconds] = /^(?:(\d{1,3}):)?(\d{1,4})$/.exec(plain) ?? []
    const second = Number(minutes ?? 0) * 60 + Number(seconds)
    if (seconds === undefined || (minutes !== undefined && Number(seconds) > 59) || second > 7200)
      faults.push({ path: name, say: `${label}: type seconds, such as 45, or minutes and seconds, such as 1:30.` })
    else times.push({ event: name, second })
  }
  times.sort((a, b) => a.second - b.second)
  return { times, faults }
}
