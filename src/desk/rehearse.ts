// npm run rehearse -- FILE [--set NAME=VALUE ...] [--answers FILE] [--goods GRAMS] [--json]
// npm run rehearse -- FILE FILE ... [--after MIN[,MIN...]] [--goods GRAMS]
import { parseArgs } from 'node:util'
import { rehearse } from '../session/rehearsal.ts'
import { promptPerson } from '../session/rehearsal-person.ts'
import { rehearseTogether } from '../session/rehearse-together.ts'
import { personFrom } from './rehearse/answers.ts'
import { Complaint, givenBy, START_MS } from './rehearse/given.ts'
import { printJournal, printTimeline } from './rehearse/timeline.ts'
import { afterMsOf, namesOf, printTogether } from './rehearse/together.ts'

const USE = `Name one protocol file, or several to rehearse them together:
  npm run rehearse -- FILE [--set NAME=VALUE ...] [--answers FILE] [--goods GRAMS] [--json]
  npm run rehearse -- FILE FILE ... [--after MIN[,MIN...]] [--goods GRAMS]`

type Asked = ReturnType<typeof asked>['values']

function asked(argv: string[]) {
  return parseArgs({
    args: argv,
    allowPositionals: true,
    options: {
      set: { type: 'string', multiple: true, default: [] },
      answers: { type: 'string' },
      after: { type: 'string' },
      goods: { type: 'string', default: '100' },
      json: { type: 'boolean', default: false }
    }
  })
}

function main(argv: string[]): void {
  const { values, positionals } = asked(argv)
  const [file, ...more] = positionals
  if (file === undefined) throw new Complaint(USE)
  if (more.length === 0) one(file, values)
  else several(positionals, values)
}

function one(file: string, { set, answers, after, goods, json }: Asked): void {
  if (after !== undefined) throw new Complaint('--after says when further pots start: name more than one file with it')
  const { programme, pot, protocol } = givenBy(file, 'rehearsal', set, goods)
  const done = rehearse(programme, pot, protocol, START_MS, answers === undefined ? promptPerson : personFrom(answers))
  if (json) printJournal(done.told)
  else printTimeline(programme, done)
  if (done.stuck) throw new Complaint(`The rehearsal stopped short: ${done.stuck}`)
}

function several(files: string[], { set, answers, after, goods, json }: Asked): void {
  const alone = [set.length > 0 ? '--set' : '', answers === undefined ? '' : '--answers', json ? '--json' : '']
  for (const option of alone.filter(Boolean)) {
    throw new Complaint(`${option} is meant for one file alone, and ${files.length} are named: leave it out`)
  }
  const afterMs = afterMsOf(after, files)
  const names = namesOf(files)
  const pots = files.map((file, i) => ({ ...givenBy(file, names[i] ?? file, [], goods), afterMs: afterMs[i] ?? 0 }))
  const { pots: done, meetings } = rehearseTogether(pots, START_MS)
  printTogether(pots, done, meetings)
  const stuck = done.flatMap((each, i) => (each.stuck ? [`${names[i]}: ${each.stuck}`] : []))
  if (stuck.length > 0) throw new Complaint(`The rehearsal stopped short:\n${stuck.join('\n')}`)
}

try {
  main(process.argv.slice(2))
} catch (error) {
  if (!(error instanceof Complaint) && !(error instanceof TypeError && 'code' in error)) throw error
  console.error((error as Error).message)
  process.exitCode = 1
}
