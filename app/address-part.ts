/** A part of an address as it was before it was written into one. What nobody wrote so stays as it is, and names nothing. */
export function addressPart(encoded: string): string {
  try {
    return decodeURIComponent(encoded)
  } catch {
    return encoded
  }
}
