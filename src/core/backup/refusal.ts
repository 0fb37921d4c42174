// Why a file is not restored from, and what is safe to do then.
import { BACKUP_VERSION } from './format.ts'

export type BackupRefusal = {
  why: 'not-a-backup' | 'newer' | 'cut-short' | 'changed' | 'unreadable'
  /** Where in the file, in bytes from its start. */
  atByte: number
  say: string
  /** What is safe to do. */
  instead: string
}

const UNTOUCHED = 'Nothing on this device was changed.'
const ANOTHER = 'Copy the file again from where it was kept, or take an earlier backup.'

export function notABackup(): BackupRefusal {
  const instead = `${UNTOUCHED} Choose a file whose name ends in .strandline-backup.`
  return { why: 'not-a-backup', atByte: 0, say: 'This file is no backup of Strandline.', instead }
}

export function newer(version: string): BackupRefusal {
  return {
    why: 'newer',
    atByte: 0,
    say: `This backup is of version ${version}; this Strandline reads version ${BACKUP_VERSION}.`,
    instead: `${UNTOUCHED} Keep the file. Open Strandline once with a network, so that it brings itself up to date, then restore again.`
  }
}

export function cutShort(atByte: number): BackupRefusal {
  const say = `This backup is cut short: it ends after ${atByte} bytes, before its closing line.`
  return { why: 'cut-short', atByte, say, instead: `${UNTOUCHED} ${ANOTHER}` }
}

export function changed(atByte: number, what: string): BackupRefusal {
  const say = `This backup was changed or damaged near byte ${atByte}: ${what}.`
  return { why: 'changed', atByte, say, instead: `${UNTOUCHED} ${ANOTHER}` }
}

/** The browser could not read the file itself: a stick that was pulled, a folder, a file that is gone. */
export function unreadable(atByte: number, detail: string): BackupRefusal {
  const say = `The file can’t be read${detail === '' ? '' : ` (${detail})`}.`
  return { why: 'unreadable', atByte, say, instead: `${UNTOUCHED} Put it on this device first, then choose it again.` }
}
