declare module 'virtual:protocols' {
  import type { Protocol } from '../core/protocol/model.ts'

  /** The built-in protocols, read and checked when the app was built. */
  const protocols: { file: string; text: string; protocol: Protocol }[]
  export default protocols
}
