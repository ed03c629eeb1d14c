import type { ComponentType } from 'react'
import type { DrawingId } from '@/lib/guide/drawing-ids'
import { ArrowCeiling, ArrowFloor, ArrowWall } from './arrow-grilles'
import { ArrowCabinet, ArrowMedia, ArrowSlot } from './arrow-units'
import { ReturnGrille, SupplyRegister } from './grilles'
import { DuctedHome, DuctlessHead, NoFilter, Ventilator, WindowUnit } from './kinds'
import { LightClear, LightDark, LightHalf } from './light'
import { LadderNo, StoolYes } from './reach'
import { PrintedSize, ThreeSides } from './size'

const DRAWINGS = {
  'ducted-home': DuctedHome,
  'return-grille': ReturnGrille,
  'supply-register': SupplyRegister,
  'arrow-ceiling': ArrowCeiling,
  'arrow-wall': ArrowWall,
  'arrow-floor': ArrowFloor,
  'arrow-slot': ArrowSlot,
  'arrow-cabinet': ArrowCabinet,
  'arrow-media': ArrowMedia,
  'ductless-head': DuctlessHead,
  ventilator: Ventilator,
  'no-filter': NoFilter,
  'window-unit': WindowUnit,
  'printed-size': PrintedSize,
  'three-sides': ThreeSides,
  'light-clear': LightClear,
  'light-half': LightHalf,
  'light-dark': LightDark,
  'stool-yes': StoolYes,
  'ladder-no': LadderNo,
} satisfies Record<DrawingId, ComponentType>

/** The drawing a screen asks for. Server and client components may both use it; it has no state and no colours of its own but the light test's. */
export function Drawing({ id }: { id: DrawingId }) {
  const Picture = DRAWINGS[id]
  return <Picture />
}
