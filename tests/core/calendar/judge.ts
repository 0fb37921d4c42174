// The rules of RFC 5545 that ical.js lets pass, as a judge of our own that reads octets. It shares nothing with the code
// it judges.

type Component = { name: string; lines: string[]; within: Component[] }

const UTC = /^\d{8}T([01]\d|2[0-3])[0-5]\d[0-5]\dZ$/
// dur-value, 3.3.6: hours, minutes, seconds in order, none left out between two others.
const DURATION = /^[+-]?P(\d+W|\d+D(T.+)?|T(\d+H(\d+M(\d+S)?)?|\d+M(\d+S)?|\d+S))$/
const TEXT = ['UID', 'SUMMARY', 'DESCRIPTION', 'PRODID']

/** What is wrong with a file; empty: nothing found. */
export function faultsOf(text: string): string[] {
  const octets = Buffer.from(text, 'utf8')
  const wrong: string[] = []
  if (octets.toString('utf8') !== text) wrong.push('is not well-formed Unicode')
  if (!text.endsWith('\r\n')) wrong.push('does not end with CRLF')
  if (/\r(?!\n)|(?<!\r)\n/.test(text)) wrong.push('has a line end that is not CRLF')
  // Cut as octets: a fold inside a character leaves rows that are no UTF-8.
  for (const row of rowsOf(octets)) {
    if (row.length > 75) wrong.push(`has a line of ${row.length} octets`)
    if (!isUtf8(row)) wrong.push('is folded inside a character')
    if (row.some((octet) => (octet < 0x20 && octet !== 0x09) || octet === 0x7f)) wrong.push('holds a control character')
  }
  const lines = text
    .replace(/\r\n[ \t]/g, '')
    .split('\r\n')
    .slice(0, -1)
  for (const line of lines) if (!/^[A-Z-]+(;[A-Z-]+=[^;:]+)*:/.test(line)) wrong.push(`has no name in "${line}"`)
  const read = componentsOf(lines)
  if (typeof read === 'string') return [...wrong, read]
  return [...wrong, ...ofCalendar(read)]
}

function rowsOf(octets: Buffer): Buffer[] {
  const rows: Buffer[] = []
  let from = 0
  for (let end = octets.indexOf('\r\n'); end >= 0; end = octets.indexOf('\r\n', from)) {
    rows.push(octets.subarray(from, end))
    from = end + 2
  }
  if (from < octets.length) rows.push(octets.subarray(from))
  return rows
}

function isUtf8(row: Buffer): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(row)
    return true
  } catch {
    return false
  }
}

function componentsOf(lines: string[]): Component | string {
  const open: Component[] = [{ name: '', lines: [], within: [] }]
  for (const line of lines) {
    const here = open.at(-1) as Component
    if (line.startsWith('BEGIN:')) {
      const inner = { name: line.slice(6), lines: [], within: [] }
      here.within.push(inner)
      open.push(inner)
    } else if (line.startsWith('END:')) {
      if (here.name !== line.slice(4)) return `closes ${line.slice(4)} where ${here.name} is open`
      open.pop()
    } else here.lines.push(line)
  }
  return open.length === 1 ? (open[0] as Component) : `leaves ${open.at(-1)?.name} open`
}

function valuesOf({ lines }: Component, name: string): string[] {
  return lines.filter((line) => line.split(/[;:]/)[0] === name).map((line) => line.slice(line.indexOf(':') + 1))
}

function ofCalendar({ lines, within }: Component): string[] {
  const [calendar, ...more] = within
  if (calendar?.name !== 'VCALENDAR' || more.length > 0 || lines.length > 0) return ['is not one VCALENDAR']
  const uids = calendar.within.flatMap((event) => valuesOf(event, 'UID'))
  return [
    ...once(calendar, ['VERSION', 'PRODID']),
    ...(valuesOf(calendar, 'VERSION')[0] === '2.0' ? [] : ['is not version 2.0']),
    ...(new Set(uids).size === uids.length ? [] : ['has a UID twice']),
    ...calendar.within.flatMap((event) => ofEvent(event, valuesOf(calendar, 'METHOD')[0] ?? null)),
    ...textFaults(calendar)
  ]
}

function ofEvent(event: Component, method: string | null): string[] {
  if (event.name !== 'VEVENT') return [`has a ${event.name}`]
  const duration = valuesOf(event, 'DURATION')[0]
  const sequence = valuesOf(event, 'SEQUENCE')[0]
  const status = valuesOf(event, 'STATUS')[0]
  return [
    ...once(event, ['UID', 'DTSTAMP', 'DTSTART']),
    // RFC 5546, 3.2.1 and 3.2.5: what is published or cancelled has its organizer and no attendee.
    ...(method === null ? [] : once(event, ['ORGANIZER', 'SUMMARY', 'SEQUENCE'])),
    ...(valuesOf(event, 'ATTENDEE').length > 0 ? ['has an ATTENDEE'] : []),
    ...['DTSTAMP', 'DTSTART'].flatMap((name) =>
      valuesOf(event, name).every((value) => UTC.test(value)) ? [] : [`${name} is not UTC`]
    ),
    ...(duration === undefined || (DURATION.test(duration) && !duration.startsWith('-')) ? [] : ['DURATION is wrong']),
    ...(valuesOf(event, 'DTEND').length > 0 && duration !== undefined ? ['has DTEND and DURATION'] : []),
    ...(sequence === undefined || /^\d+$/.test(sequence) ? [] : ['SEQUENCE is no integer']),
    ...(status === undefined || /^(TENTATIVE|CONFIRMED|CANCELLED)$/.test(status) ? [] : ['STATUS is wrong']),
    ...(method === 'CANCEL' && status !== 'CANCELLED' ? ['cancels nothing'] : []),
    ...textFaults(event),
    ...event.within.flatMap(ofAlarm)
  ]
}

function ofAlarm(alarm: Component): string[] {
  if (alarm.name !== 'VALARM') return [`has a ${alarm.name}`]
  const trigger = valuesOf(alarm, 'TRIGGER')[0] ?? ''
  return [
    ...once(alarm, ['ACTION', 'TRIGGER']),
    ...(valuesOf(alarm, 'ACTION')[0] === 'DISPLAY' ? once(alarm, ['DESCRIPTION']) : []),
    ...(DURATION.test(trigger) ? [] : ['TRIGGER is no length of time']),
    ...textFaults(alarm)
  ]
}

function once(component: Component, names: string[]): string[] {
  return names
    .filter((name) => valuesOf(component, name).length !== 1)
    .map((name) => `${component.name} has not one ${name}`)
}

/** 3.3.11: backslash, semicolon and comma are escaped, and nothing else is but the new line. */
function textFaults(component: Component): string[] {
  return TEXT.flatMap((name) => valuesOf(component, name)).flatMap((value) =>
    /^(\\[\\;,nN]|[^\\;,])*$/.test(value) ? [] : [`"${value}" is not escaped`]
  )
}
