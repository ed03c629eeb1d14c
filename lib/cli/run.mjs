// The one entry of `npm start`, `npm test` and the other commands that run before anything is installed:
// it must be readable by an old Node, so that a person on one gets a sentence and not a syntax error.
var needed = [20, 19]
var has = process.versions.node.split('.').map(Number)
var parent = process.ppid
var commands = {
  start: './serve.mjs',
  setup: './setup.mjs',
  build: './setup.mjs',
  dev: './dev.mjs',
  test: '../../tests/run.mjs',
}

process.env.NEXT_TELEMETRY_DISABLED = '1'
process.env.CHECKPOINT_DISABLE = '1'

if (has[0] < needed[0] || (has[0] === needed[0] && has[1] < needed[1])) {
  console.error(
    'Plenum needs Node ' +
      needed.join('.') +
      ' or newer; this is ' +
      process.versions.node +
      '. Get it from nodejs.org.',
  )
  process.exitCode = 1
} else {
  // npm passes a signal to its shell only, and the shell ends without passing it on: who loses his parent stops.
  if (process.env.npm_lifecycle_event) {
    setInterval(() => {
      if (process.ppid !== parent) process.kill(process.pid, 'SIGTERM')
    }, 500).unref()
  }
  import(commands[process.argv[2]])
    .then((command) => command.main(process.argv.slice(3)))
    .catch((error) => {
      // `plain` errors are ours: the sentence says it all, a stack would bury it.
      console.error(error.plain ? error.message : error)
      process.exit(1)
    })
}
