// Words that must not stand in names or in text. Each is put together from pieces here, or the rule would see itself.
import { type File, isCode } from './tree.ts'

const emptyNames = new Set([
  'util',
  'utils',
  'helper',
  'helpers',
  'common',
  'lib',
  'libs',
  'misc',
  'manager',
  'managers',
  'service',
  'services'
])

/** Folder and file names are concepts of the trade or the machine. */
export const nameComplaints = ({ path }: File): string[] =>
  path.split('/').flatMap((name) => {
    const stem = name.replace(/\..*$/, '')
    const words = stem === 'service-worker' ? [] : stem.toLowerCase().split('-')
    return words.filter((word) => emptyNames.has(word)).map((word) => `${path} "${word}" names no concept`)
  })

const linesWith = ({ path, text }: File, pattern: RegExp, say: string): string[] =>
  text.split('\n').flatMap((line, index) => (pattern.test(line) ? [`${path}:${index + 1} ${say}`] : []))

const left = new RegExp(`\\b(${['TO' + 'DO', 'FIX' + 'ME', 'XX' + 'X'].join('|')})\\b`)

export const leftOpenComplaints = (file: File): string[] => linesWith(file, left, 'something is left open')

const silenced = /\b(it|test|describe)\s*\.\s*(only|skip|todo|skipIf|runIf|fails)\b/

/** A test that does not run proves nothing, and one that runs alone hides the rest. */
export const silencedTestComplaints = (file: File): string[] =>
  isCode(file.path) ? linesWith(file, silenced, 'a test is silenced, or silences the others') : []

const unchecked = new RegExp(`@ts-(${['ig' + 'nore', 'no' + 'check'].join('|')})`)

export const uncheckedComplaints = (file: File): string[] =>
  isCode(file.path) ? linesWith(file, unchecked, 'the compiler is silenced without saying what for') : []

const hosts = [
  ['registry', 'npmjs', 'org'],
  ['registry', 'yarnpkg', 'com'],
  ['registry', 'npmmirror', 'com'],
  ['npm', 'pkg', 'github', 'com'],
  ['jsr', 'io'],
  ['unpkg', 'com'],
  ['cdn', 'jsdelivr', 'net'],
  ['esm', 'sh']
].map((pieces) => pieces.join('\\.'))

const registry = new RegExp(`\\b(${hosts.join('|')})\\b`, 'i')

/** Whoever clones the project takes the packages from where their own npm takes them. */
export const registryComplaints = (file: File): string[] =>
  linesWith(file, registry, 'names the host of a package registry')
