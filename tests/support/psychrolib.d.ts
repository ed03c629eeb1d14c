declare module 'psychrolib' {
  const psychrolib: {
    IP: unknown
    SetUnitSystem(system: unknown): void
    /** Psi at an altitude in ft, with the IP units. */
    GetStandardAtmPressure(feet: number): number
  }
  export default psychrolib
}
