/** By file: a part of a line of code, and why a mutant of that line may live. */
export const WHY: Record<string, readonly (readonly [part: string, why: string])[]> = {}
