import type { Mark, ZoneRow } from '@/lib/core/tables'

const P: Mark = 'P'

/** Starting values by climate zone (thresholds: ASHRAE 169), to be replaced by the person's own station. */
export const zones: readonly ZoneRow[] = [
  { zone: 0, name: 'extremely hot', hdd65: 20, cdd65: 6000, heatingDesignF: 60, coolingDesignF: 97, mark: P },
  { zone: 1, name: 'very hot', hdd65: 150, cdd65: 4500, heatingDesignF: 45, coolingDesignF: 91, mark: P },
  { zone: 2, name: 'hot', hdd65: 1300, cdd65: 3200, heatingDesignF: 31, coolingDesignF: 97, mark: P },
  { zone: 3, name: 'warm', hdd65: 2700, cdd65: 1900, heatingDesignF: 23, coolingDesignF: 93, mark: P },
  { zone: 4, name: 'mixed', hdd65: 4500, cdd65: 1200, heatingDesignF: 15, coolingDesignF: 91, mark: P },
  { zone: 5, name: 'cool', hdd65: 6200, cdd65: 850, heatingDesignF: 2, coolingDesignF: 88, mark: P },
  { zone: 6, name: 'cold', hdd65: 7500, cdd65: 700, heatingDesignF: -10, coolingDesignF: 87, mark: P },
  { zone: 7, name: 'very cold', hdd65: 9300, cdd65: 350, heatingDesignF: -20, coolingDesignF: 83, mark: P },
  { zone: 8, name: 'subarctic', hdd65: 13500, cdd65: 50, heatingDesignF: -40, coolingDesignF: 78, mark: P },
]
