/** A number as a large button to call, and as text for whoever reads it from another phone. */
export function TelLink({ phone, name }: { phone: string; name: string | null }) {
  return (
    <p className="tel">
      <a className="button" href={`tel:${phone.replace(/[^\d+*#]/g, '')}`}>
        Call {name === null ? phone : `${name}, ${phone}`}
      </a>
    </p>
  )
}
