'use client'

import { type ComponentProps, useEffect, useState } from 'react'
import { FormField } from './form-field'

/** A password of an `ActionForm`, which can be looked at while it is typed. Never filled in from an answer. */
export function PasswordField(props: ComponentProps<typeof FormField>) {
  const [ready, setReady] = useState(false)
  const [shown, setShown] = useState(false)
  // Without scripts nothing could show it, so nothing offers to.
  useEffect(() => setReady(true), [])
  return (
    <div className="password">
      <FormField {...props} type={shown ? 'text' : 'password'} spellCheck={false} autoCapitalize="none" />
      {ready && (
        <label className="show-password">
          <input type="checkbox" checked={shown} onChange={(event) => setShown(event.target.checked)} />
          Show what I type
        </label>
      )}
    </div>
  )
}
