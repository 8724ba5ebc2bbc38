// Shows what this server pushes, also while no page of it is open, and opens its room when tapped. It fetches and keeps nothing.
self.addEventListener('push', (event) => {
  const { title, body, url } = event.data.json()
  event.waitUntil(
    self.registration.showNotification(title, {
      body,
      tag: url,
      renotify: true,
      requireInteraction: true,
      data: { url },
    }),
  )
})

self.addEventListener('notificationclick', (event) => {
  event.notification.close()
  event.waitUntil(self.clients.openWindow(event.notification.data.url))
})
