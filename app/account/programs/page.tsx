import type { Metadata } from 'next'
import { databasePage } from '@/app/database-page'
import { ActionForm } from '@/app/parts/action-form'
import { FormField } from '@/app/parts/form-field'
import { SubmitButton } from '@/app/parts/submit-button'
import { requireViewer } from '@/lib/access/page'
import { publicUrl } from '@/lib/access/public-url'
import { dateInWords } from '@/lib/core/day-words'
import { type ApiToken, listApiTokens } from '@/lib/data/api-tokens'
import { makeToken, revokeToken } from './actions'

export const metadata: Metadata = { title: 'Programs' }

export default databasePage(async () => {
  const viewer = await requireViewer('/account/programs')
  const tokens = await listApiTokens(viewer)
  const open = tokens.filter(({ revokedAt }) => revokedAt === null)
  const revoked = tokens.filter(({ revokedAt }) => revokedAt !== null)
  return (
    <main id="main" tabIndex={-1}>
      <h1>Programs</h1>
      <p className="lead">
        A token lets a script or a wall display read what is due in your homes. It can change nothing, and it opens no
        other page.
      </p>

      <h2>A new token</h2>
      <ActionForm action={makeToken}>
        <FormField
          id="name"
          label="What is it for?"
          hint="So that you know which one to revoke, like “Kitchen display”."
          autoComplete="off"
          maxLength={60}
          required
        />
        <SubmitButton kind={open.length === 0 ? 'main' : undefined}>Make a token</SubmitButton>
      </ActionForm>

      <h2>Your tokens</h2>
      {/* One form for all, so that what was done is still said when its token has left the list. */}
      <ActionForm action={revokeToken}>
        {open.length === 0 && <p>None: no program reads anything of yours.</p>}
        <ul className="plain-list">
          {open.map((token) => (
            <Open key={token.id} token={token} />
          ))}
        </ul>
      </ActionForm>
      {open.length > 0 && (
        <p className="hint">
          A new password or signing out everywhere does not end a token; revoking it does, at once.
        </p>
      )}
      {revoked.length > 0 && (
        <details>
          <summary>Revoked ({revoked.length})</summary>
          <ul>
            {revoked.map(({ id, name, revokedAt }) => (
              <li key={id}>
                {name}: revoked on {dateInWords((revokedAt ?? '').slice(0, 10))}.
              </li>
            ))}
          </ul>
        </details>
      )}

      <h2>For whoever writes the program</h2>
      <p>Ask for the plan of all your open homes with the token:</p>
      <pre className="command">
        <code>{`curl -H "Authorization: Bearer $TOKEN" ${publicUrl()}/api/v1/plan`}</code>
      </pre>
      <p>
        <a href="/api/v1/openapi.json">What comes back, described for programs</a> (OpenAPI).
      </p>
    </main>
  )
})

function Open({ token: { id, name, createdAt, lastUsedOn } }: { token: ApiToken }) {
  return (
    <li>
      <h3>{name}</h3>
      <p>
        Made on {dateInWords(createdAt.slice(0, 10))}.{' '}
        {lastUsedOn ? `Last used on ${dateInWords(lastUsedOn)}.` : 'Not used yet.'}
      </p>
      <SubmitButton kind="quiet" name="token" value={id}>
        Revoke {name}
      </SubmitButton>
    </li>
  )
}
