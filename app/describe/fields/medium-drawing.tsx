/** A slice through each kind of filter, with the air coming from the left. */
export function MediumDrawing({ medium }: { medium: 'fiberglass' | 'pleated' | 'media' | 'washable' }) {
  return (
    <svg viewBox="0 0 48 48" aria-hidden="true" focusable="false" fill="none" stroke="currentColor">
      <rect x={FRAMES[medium][0]} y="3" width={FRAMES[medium][1]} height="42" strokeWidth="3" />
      {medium === 'fiberglass' && <path d="M20 8q8 4 0 8t8 8-8 8 8 8M27 8q-7 5 0 9t-6 9 6 14" strokeWidth="1.6" />}
      {medium === 'pleated' && <path d="M19 6l10 4-10 4 10 4-10 4 10 4-10 4 10 4-10 4 10 4" strokeWidth="1.8" />}
      {medium === 'media' && (
        <path d="M7 6l34 3-34 3 34 3-34 3 34 3-34 3 34 3-34 3 34 3-34 3 34 3-34 3 34 3" strokeWidth="1.6" />
      )}
      {medium === 'washable' && (
        <path d="M17 10h14M17 17h14M17 24h14M17 31h14M17 38h14M20 4v40M24 4v40M28 4v40" strokeWidth="1.4" />
      )}
    </svg>
  )
}

// Left edge and width of the frame: a deep one takes the whole picture.
const FRAMES = { fiberglass: [17, 14], pleated: [17, 14], media: [5, 38], washable: [16, 16] } as const
