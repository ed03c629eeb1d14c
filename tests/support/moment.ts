/** A moment at which the tests' writes happen. */
export const AT = '2026-11-25T09:00:00.000Z'
