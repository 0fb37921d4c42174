// The match: in words, in figures, and both colours side by side.
import { changeSay, deltaSay, doubtSay, figureSay, pairSay, sidesSay, worstSay } from '../../../parts/match-words.ts'
import { Chips } from '../chips.tsx'
import type { MatchFound } from './use-match.ts'

export function Result({ found: { match, skein, target } }: { found: MatchFound }): preact.JSX.Element {
  const { whole, bands } = match
  const worst = worstSay(match)
  return (
    <section class="swatches-part" aria-labelledby="swatches-match">
      <h2 id="swatches-match">Match</h2>
      <div class="swatches-verdict" role="status">
        <p class="swatches-word">{pairSay(whole)}</p>
        <p class="swatches-turn">{deltaSay(whole)}</p>
        {worst === null ? null : <p>{worst}</p>}
        <p>{changeSay(whole)}</p>
        <p class="soft">{`${doubtSay(whole)} ${sidesSay(match, skein, target)}`}</p>
      </div>
      <Chips
        left={match.skein}
        right={match.target}
        label="The skein’s colour on the left, what it is held against on the right."
      >
        Left the skein, right what it is held against, on the average. A screen shows colours in a way of its own.
      </Chips>
      {bands === null ? (
        skein.readings.length === target.readings.length ? null : (
          <p class="soft">{`Not compared band by band: the skein has ${skein.readings.length}, what it is held against ${target.readings.length}.`}</p>
        )
      ) : (
        <Bands bands={bands} />
      )}
    </section>
  )
}

function Bands({ bands }: { bands: NonNullable<MatchFound['match']['bands']> }): preact.JSX.Element {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys.
    <section class="swatches-scroll" aria-label="Match band by band" tabIndex={0}>
      <table>
        <caption>Band by band, from end A of both</caption>
        <thead>
          <tr>
            <th scope="col">Band</th>
            <th scope="col">ΔE00</th>
            <th scope="col">Which way</th>
            <th scope="col">ΔL*</th>
            <th scope="col">ΔC*</th>
            <th scope="col">ΔH*</th>
          </tr>
        </thead>
        <tbody>
          {bands.map(({ band, pair }) => (
            <tr key={band}>
              <th scope="row">{band}</th>
              {pair === null ? (
                <td colSpan={5}>Not compared: above the liquor, or can’t be read</td>
              ) : (
                <>
                  <td>{figureSay(pair.de00, pair.sd)}</td>
                  <td>{pair.chance === true ? 'None that shows' : pairSay(pair)}</td>
                  <td>{figureSay(pair.deltaL, null)}</td>
                  <td>{figureSay(pair.deltaC, null)}</td>
                  <td>{figureSay(pair.deltaH, null)}</td>
                </>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
