// The port that the app is served on, and what to say when it can't be had.

const usualPort = 4173

/** @param {string | undefined} entered @returns {{ok: true, port: number} | {ok: false, say: string}} */
export const readPort = (entered) => {
  const text = (entered ?? '').trim()
  if (text === '') return { ok: true, port: usualPort }
  const port = Number(text)
  if (/^\d{1,5}$/.test(text) && port >= 1 && port <= 65535) return { ok: true, port }
  return {
    ok: false,
    say: `PORT is "${text}", which is no port. Give a whole number from 1 to 65535, or leave it out for ${usualPort}: PORT=8080 npm start`
  }
}

/** @param {number} port @param {string} code @returns {string} */
export const sayPortProblem = (port, code) => {
  const other = port === usualPort ? 4174 : usualPort
  const wayOut = `choose another one: PORT=${other} npm start`
  if (code === 'EADDRINUSE') {
    return `Port ${port} is taken by another program (perhaps Strandline runs already: look at http://localhost:${port}). Stop that program, or ${wayOut}`
  }
  if (code === 'EACCES') return `Port ${port} may not be opened by this user. Please ${wayOut}`
  return `Port ${port} could not be opened (${code}). Please ${wayOut}`
}
