export default function Page() {
  return (
    <main>
      <h1>Plenum</h1>
    </main>
  )
}
