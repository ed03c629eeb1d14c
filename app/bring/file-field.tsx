'use client'

import { type DragEvent, useRef, useState } from 'react'

/** A place to drop a file onto; without JavaScript it is the plain file field that it holds. */
export function FileField() {
  const input = useRef<HTMLInputElement>(null)
  const [isOver, setOver] = useState(false)
  function drop(event: DragEvent) {
    event.preventDefault()
    setOver(false)
    if (input.current && event.dataTransfer.files.length > 0) input.current.files = event.dataTransfer.files
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is one more way; the field inside does the same by keyboard.
    <div
      className={isOver ? 'field drop over' : 'field drop'}
      onDragOver={(event) => {
        event.preventDefault()
        setOver(true)
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <label className="label" htmlFor="file">
        Choose a file, or drop it here
      </label>
      <p className="hint" id="file-hint">
        A .json file of at most 9 MB, or the .zip archive of a home with its photos, at most 11 MB. Whoever hosts this
        can bring larger ones.
      </p>
      <input
        ref={input}
        id="file"
        name="file"
        type="file"
        accept=".json,application/json,.zip,application/zip"
        aria-describedby="file-hint"
      />
    </div>
  )
}
