// `DAYS_ON=200` sets the clock on by so many days in every process and page of the tests, and leaves it running: what is
// good for a week must not be made on a fixed day, and what passes by day must pass by night (`DAYS_ON=0.4`).
;((days) => {
  const Real = Date
  const now = Real.now.bind(Real)
  Real.now = () => now() + days * 86_400_000
  globalThis.Date = new Proxy(Real, {
    construct: (target, args, made) => Reflect.construct(target, args.length > 0 ? args : [target.now()], made),
    apply: () => new Real(Real.now()).toString(),
  })
})(Number(globalThis.process?.env.DAYS_ON ?? globalThis.daysOn))
