// Which room of the house may ask which other one. Everything points towards core.
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { type Import, importsOf } from './imported.ts'
import { type File, root } from './tree.ts'

/** The rooms inside core, each with those it may ask besides itself. */
const coreRooms: Record<string, string[]> = {
  quantity: [],
  chemistry: ['quantity'],
  colour: ['quantity', 'chemistry'],
  protocol: ['quantity', 'chemistry'],
  safety: ['quantity', 'chemistry', 'protocol'],
  pot: ['quantity', 'chemistry', 'protocol', 'safety'],
  shelf: ['quantity', 'chemistry', 'protocol', 'safety', 'pot'],
  record: ['quantity', 'chemistry', 'protocol', 'safety', 'pot', 'shelf', 'colour'],
  backup: ['pot'],
  spoken: ['quantity', 'chemistry', 'protocol', 'safety', 'pot'],
  calendar: ['quantity', 'protocol', 'pot', 'record']
}

const rooms: Record<string, { rooms: string[]; packages: RegExp }> = {
  core: { rooms: [], packages: /^(zod|yaml|culori|date-fns)(\/|$)/ },
  session: { rooms: ['core'], packages: /^$/ },
  shell: { rooms: ['core'], packages: /^(idb-keyval|workbox-window|date-fns)(\/|$)/ },
  ui: { rooms: ['core'], packages: /^(preact|@preact\/signals|date-fns|culori|uqr|d3-scale|d3-shape)(\/|$)/ },
  app: { rooms: ['core', 'session', 'shell', 'ui'], packages: /^(preact|@preact\/signals|virtual:protocols)(\/|$)/ },
  'service-worker': { rooms: [], packages: /^workbox-/ },
  desk: { rooms: ['core', 'session'], packages: /./ }
}

/** 'src/core/pot/knot.ts' -> ['core', 'pot', 'knot.ts'] */
const partsOf = (path: string): string[] => path.split('/').slice(1)

const betweenCoreRooms = (from: string, to: string): string | null => {
  const allowed = coreRooms[from]
  if (!allowed) return `core has no room "${from}": give it its place in tests/tidy/import-rules.ts`
  return from === to || allowed.includes(to) ? null : `core/${from} may not ask core/${to}`
}

const insideUi = ([, from = '', fromScreen]: string[], [, to = '', toScreen, toFile]: string[]): string | null => {
  if (to !== 'screens') return null
  // The frame around the screens shows one of them, by its front door.
  if (from === 'app.tsx' && toFile === 'index.tsx') return null
  if (from !== 'screens') return `ui/${from} may not ask a screen`
  return fromScreen === toScreen
    ? null
    : `the screen ${fromScreen} may not ask the screen ${toScreen}: what both need is a part`
}

const betweenRooms = (file: File, asked: Import & { path: string }): string | null => {
  if (!asked.path.startsWith('src/')) return 'src asks nothing outside src'
  const from = partsOf(file.path)
  const to = partsOf(asked.path)
  const [fromRoom = '', toRoom = ''] = [from[0], to[0]]
  if (fromRoom === toRoom) {
    if (fromRoom === 'core') return betweenCoreRooms(from[1] ?? '', to[1] ?? '')
    return fromRoom === 'ui' ? insideUi(from, to) : null
  }
  // The shell gives what the session's ports ask for, so it may see their types, and nothing else of the session.
  if (fromRoom === 'shell' && asked.path === 'src/session/ports.ts' && asked.typeOnly) return null
  return rooms[fromRoom]?.rooms.includes(toRoom) ? null : `${fromRoom} may not ask ${toRoom}`
}

const ofOurs = (file: File, asked: Import & { path: string }): string | null => {
  if (!/\.(ts|tsx|mjs|css|json)$/.test(asked.path)) return 'the ending of the file is written out (.ts, .tsx)'
  return betweenRooms(file, asked) ?? (existsSync(join(root, asked.path)) ? null : 'there is no such file')
}

const ofPackages = (file: File, from: string): string | null => {
  const room = partsOf(file.path)[0] ?? ''
  if (from.startsWith('node:')) return room === 'desk' ? null : `${room} runs in a browser, which has no ${from}`
  return rooms[room]?.packages.test(from) ? null : `${room} may not ask the package ${from}`
}

/** Complaints about the imports of one file under src, each with its line. */
export const importComplaints = (file: File): string[] => {
  const room = partsOf(file.path)[0] ?? ''
  if (!rooms[room]) return [`${file.path} there is no room "${room}": give it its place in tests/tidy/import-rules.ts`]
  return importsOf(file).flatMap((asked) => {
    const { path } = asked
    const complaint = path === null ? ofPackages(file, asked.from) : ofOurs(file, { ...asked, path })
    return complaint === null ? [] : [`${file.path}:${asked.line} '${asked.from}': ${complaint}`]
  })
}
