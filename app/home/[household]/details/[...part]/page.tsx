import Link from 'next/link'
import { notFound } from 'next/navigation'
import { addressPart } from '@/app/address-part'
import { databasePage } from '@/app/database-page'
import { HomeNav } from '@/app/home/[household]/home-nav'
import { loadHome } from '@/app/home/[household]/load'
import { homeTitle } from '@/app/home/[household]/title'
import { subjectInWords } from '@/lib/core/subject-words'
import { may } from '@/lib/core/viewer'
import { contactsTyped } from '@/lib/forms/describe/contacts'
import { ContactsForm } from './contacts-form'
import { EditForm } from './edit-form'
import { editScreenOf } from './edit-screen'

type Address = { household: string; part: string[] }

export const generateMetadata = homeTitle('Details', (home, { part: [group = '', subject = ''] }: Address) =>
  group === 'contacts' ? CONTACTS : (editScreenOf(home, addressPart(group), addressPart(subject))?.title ?? 'Details'),
)

const CONTACTS = 'Whom to call, and notes'

/** One part of a home, to be changed. */
export default databasePage(async ({ params }: { params: Promise<Address> }) => {
  const { household: id, part } = await params
  const { stored } = await loadHome(id, `/home/${id}/details/${part.map(encodeURIComponent).join('/')}`)
  const { household: home } = stored
  const [group = '', subject = '', ...more] = part.map(addressPart)
  const screen = group === 'contacts' ? null : editScreenOf(home, group, subject)
  if (more.length > 0 || (group === 'contacts' ? subject !== '' : !screen)) notFound()
  const mayChange = may(stored.role, 'manage') && stored.state === 'open'
  return (
    <>
      <HomeNav id={id} home={home} current="Details" />
      <main id="main" tabIndex={-1}>
        <p className="place">
          <Link href={`/home/${id}/details`}>Details</Link>
        </p>
        <h1>{screen?.title ?? CONTACTS}</h1>
        {!mayChange ? (
          <p>This home can be read, but not changed by you.</p>
        ) : screen ? (
          <EditForm household={id} revision={stored.revision} group={group} subject={subject} screen={screen} />
        ) : (
          <ContactsForm
            household={id}
            typed={{
              ...contactsTyped({ ...stored, emergencyNumber: home.emergencyNumber }),
              ...Object.fromEntries(
                Object.entries(stored.placeNotes).map(([filter, note]) => [`note-${filter}`, [note]]),
              ),
            }}
            filters={home.filters.map((filter) => ({ id: filter.id, name: subjectInWords(home, filter.id) }))}
          />
        )}
      </main>
    </>
  )
})
