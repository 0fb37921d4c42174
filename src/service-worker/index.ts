// Keeps the whole app on the device, so that it opens without a network from the first visit on.
import {
  cleanupOutdatedCaches,
  createHandlerBoundToURL,
  type PrecacheEntry,
  precacheAndRoute
} from 'workbox-precaching'
import { NavigationRoute, registerRoute } from 'workbox-routing'
import { takePress } from './notice-press.ts'

declare const self: ServiceWorkerGlobalScope & { __WB_MANIFEST: PrecacheEntry[] }

// The build puts the list of files in the place of this name.
precacheAndRoute(self.__WB_MANIFEST)
cleanupOutdatedCaches()

// Any address inside the app is the app: its routes live in the page.
registerRoute(new NavigationRoute(createHandlerBoundToURL('index.html')))

// A new version waits until the page asks for it. The page knows whether a pot is watched; a worker can't.
self.addEventListener('message', (event) => {
  if (event.data?.type === 'skip-waiting') event.waitUntil(self.skipWaiting())
})

// The first visit's page was opened before there was a worker: without this it would not be served offline until reloaded.
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()))

// The worker writes nothing: a press of a notice's button goes to the page that owns the pots.
self.addEventListener('notificationclick', (event) => event.waitUntil(takePress(event, self.clients)))
