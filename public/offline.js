// Registers the worker that keeps the guide for when the network is gone, and sends what was answered meanwhile.
if ('serviceWorker' in navigator) {
  navigator.serviceWorker.register('/sw.js').catch(() => {})
  const send = () => {
    navigator.serviceWorker.ready.then(({ active }) => active?.postMessage('send')).catch(() => {})
  }
  send()
  addEventListener('online', send)
}
