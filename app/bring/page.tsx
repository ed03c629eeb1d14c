import { connection } from 'next/server'
import { databasePage } from '@/app/database-page'
import { findViewer } from '@/lib/access/page'
import { BringForm } from './bring-form'

export const metadata = { title: 'Bring a household file' }

async function Page() {
  await connection()
  const viewer = await findViewer()
  return (
    <main id="main" tabIndex={-1}>
      <BringForm signedIn={viewer !== null} />
    </main>
  )
}

export default databasePage(Page)
