import type { ReactNode } from 'react'

/** A table that may be wider than the page, moved sideways in a box of its own, by the arrow keys too. */
export function TableBox({ name, children }: { name: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what is moved sideways has to be reached by the keyboard.
    // biome-ignore lint/a11y/useSemanticElements: it is no part of a form.
    <div className="table-box" role="group" aria-label={name} tabIndex={0}>
      {children}
    </div>
  )
}
