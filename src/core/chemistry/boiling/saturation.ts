// IAPWS-IF97 region 4: the temperature at which water boils under a pressure, equations 30 and 31 (IAPWS R7-97(2012);
// Wagner et al., J. Eng. Gas Turbines Power 122 (2000) 150). 611.213 Pa to 22.064 MPa; 273.15 to 647.096 K.
const n1 = 0.11670521452767e4
const n2 = -0.72421316703206e6
const n3 = -0.17073846940092e2
const n4 = 0.1202082470247e5
const n5 = -0.32325550322333e7
const n6 = 0.1491510861353e2
const n7 = -0.48232657361591e4
const n8 = 0.40511340542057e6
const n9 = -0.23855557567849
const n10 = 0.65017534844798e3

/** Boiling temperature in K under a pressure in Pa. */
export function boilingK(pressurePa: number): number {
  const beta = (pressurePa / 1e6) ** 0.25
  const e = beta * beta + n3 * beta + n6
  const f = n1 * beta * beta + n4 * beta + n7
  const g = n2 * beta * beta + n5 * beta + n8
  const d = (2 * g) / (-f - Math.sqrt(f * f - 4 * e * g))
  return (n10 + d - Math.sqrt((n10 + d) ** 2 - 4 * (n9 + n10 * d))) / 2
}

/** The pressure in Pa under which water boils at a temperature in K. */
export function saturationPa(tempK: number): number {
  const theta = tempK + n9 / (tempK - n10)
  const a = theta * theta + n1 * theta + n2
  const b = n3 * theta * theta + n4 * theta + n5
  const c = n6 * theta * theta + n7 * theta + n8
  return 1e6 * ((2 * c) / (-b + Math.sqrt(b * b - 4 * a * c))) ** 4
}
