'use client'

// Takes the place of the layout when the layout itself fails, so it brings its own page and relies on nothing.
export default function GlobalError() {
  return (
    <html lang="en">
      <body>
        <main id="main" tabIndex={-1}>
          <h1>That didn’t work</h1>
          <p>
            Something went wrong on our side. What was saved before is safe. Load the page again; if it goes on, tell
            whoever runs this installation.
          </p>
        </main>
      </body>
    </html>
  )
}
