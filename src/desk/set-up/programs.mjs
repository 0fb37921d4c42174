// Programs of the machine that are not ours: where they lie, and whether they can be run.
import { accessSync, constants, statSync } from 'node:fs'
import { delimiter, join } from 'node:path'

/** @param {string} file @returns {boolean} */
export const canRun = (file) => {
  try {
    accessSync(file, constants.X_OK)
    return statSync(file).isFile()
  } catch {
    return false
  }
}

/** The first of these names on the path, then in `places`. @param {string[]} names @param {string[]} [places]
 * @returns {string | null} */
export const findProgram = (names, places = []) => {
  const folders = [...(process.env.PATH ?? '').split(delimiter), ...places].filter((folder) => folder !== '')
  return folders.flatMap((folder) => names.map((name) => join(folder, name))).find(canRun) ?? null
}
