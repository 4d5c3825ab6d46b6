/**
 * The floor of the bench: positions of one corner by the same closed forms, written as one loop over local numbers with
 * no function, buffer or check between them, and Newton warm from the pose before. What no interface can beat by much.
 */
import { assemble, Fixed, type Model } from '../../solver/index.ts';

/** Solves all poses in order; returns the sum of the wheel centres' y, so that nothing can be left out. */
export type Floor = (travels: Float64Array, racks: Float64Array, isCold: boolean) => number;

export function makeFloor(model: Model): Floor {
  const f = assemble(model).linkage.fixed;
  const L = f.slice(Fixed.lowerCircle, Fixed.lowerCircle + 13);
  const U = f.slice(Fixed.upperCircle, Fixed.upperCircle + 13);
  const own = f.slice();
  return (travels, racks, isCold) => {
    const lx = L[0]!;
    const ly = L[1]!;
    const lz = L[2]!;
    const lr = L[12]!;
    const lpx = L[3]! * lr;
    const lpy = L[4]! * lr;
    const lpz = L[5]! * lr;
    const lqx = L[6]! * lr;
    const lqy = L[7]! * lr;
    const lqz = L[8]! * lr;
    const ux = U[0]!;
    const uy = U[1]!;
    const uz = U[2]!;
    const px = U[3]!;
    const py = U[4]!;
    const pz = U[5]!;
    const qx = U[6]!;
    const qy = U[7]!;
    const qz = U[8]!;
    const ur = U[12]!;
    const span2 = own[Fixed.spanSquared]!;
    const spanInverse = own[Fixed.spanInverse]!;
    const along = own[Fixed.outerAlong]!;
    const aside = own[Fixed.outerAside]!;
    const rod2 = own[Fixed.rodSquared]!;
    const w1 = own[Fixed.centreInFrame]!;
    const w2 = own[Fixed.centreInFrame + 1]!;
    const w3 = own[Fixed.centreInFrame + 2]!;
    const rx = own[Fixed.rackOrigin]!;
    const ry = own[Fixed.rackOrigin + 1]!;
    const rz = own[Fixed.rackOrigin + 2]!;
    const dx = own[Fixed.rackDirection]!;
    const dy = own[Fixed.rackDirection + 1]!;
    const dz = own[Fixed.rackDirection + 2]!;
    const upperSide = own[Fixed.upperSide]!;
    const rodSide = own[Fixed.rodSide]!;
    const height = own[Fixed.designHeight]!;
    let theta = 0;
    let slope = 0;
    let lastTravel = 0;
    let sum = 0;
    for (let i = 0; i < travels.length; i += 1) {
      const travel = travels[i]!;
      const rack = racks[i]!;
      const ix = rx + rack * dx;
      const iy = ry + rack * dy;
      const iz = rz + rack * dz;
      if (isCold) theta = 0;
      else theta += slope * (travel - lastTravel);
      lastTravel = travel;
      for (let count = 0; count < 12; count += 1) {
        const c = Math.cos(theta);
        const s = Math.sin(theta);
        const ax = lx + c * lpx + s * lqx;
        const ay = ly + c * lpy + s * lqy;
        const az = lz + c * lpz + s * lqz;
        const ex = ax - ux;
        const ey = ay - uy;
        const ez = az - uz;
        const e = ex * px + ey * py + ez * pz;
        const g0 = ex * qx + ey * qy + ez * qz;
        const g = (ur * ur + ex * ex + ey * ey + ez * ez - span2) / (2 * ur);
        const h2 = e * e + g0 * g0;
        const root = upperSide * Math.sqrt(h2 - g * g);
        const uc = (e * g - g0 * root) / h2;
        const us = (g0 * g + e * root) / h2;
        const bx = ux + ur * (uc * px + us * qx);
        const by = uy + ur * (uc * py + us * qy);
        const bz = uz + ur * (uc * pz + us * qz);
        const kx = (bx - ax) * spanInverse;
        const ky = (by - ay) * spanInverse;
        const kz = (bz - az) * spanInverse;
        const fx = ix - ax;
        const fy = iy - ay;
        const fz = iz - az;
        const axial = fx * kx + fy * ky + fz * kz;
        const nx = fx - axial * kx;
        const ny = fy - axial * ky;
        const nz = fz - axial * kz;
        const n2 = nx * nx + ny * ny + nz * nz;
        const gg = (aside * aside + n2 + (axial - along) * (axial - along) - rod2) / (2 * aside);
        const straight = gg / n2;
        const across = (rodSide * Math.sqrt(n2 - gg * gg)) / n2;
        const mx = straight * nx + across * (ky * nz - kz * ny);
        const my = straight * ny + across * (kz * nx - kx * nz);
        const mz = straight * nz + across * (kx * ny - ky * nx);
        const vz = kx * my - ky * mx;
        const wz = az + w1 * kz + w2 * mz + w3 * vz;
        const off = wz - height - travel;
        if (off < 1e-11 && off > -1e-11) {
          sum += ay + w1 * ky + w2 * my + w3 * (kz * mx - kx * mz);
          break;
        }
        const tx = c * lqx - s * lpx;
        const ty = c * lqy - s * lpy;
        const tz = c * lqz - s * lpz;
        const sx = ur * (uc * qx - us * px);
        const sy = ur * (uc * qy - us * py);
        const sz = ur * (uc * qz - us * pz);
        const phi = (kx * tx + ky * ty + kz * tz) / (kx * sx + ky * sy + kz * sz);
        const jx = (sx * phi - tx) * spanInverse;
        const jy = (sy * phi - ty) * spanInverse;
        const jz = (sz * phi - tz) * spanInverse;
        const ox = ky * jz - kz * jy;
        const oy = kz * jx - kx * jz;
        const oz = kx * jy - ky * jx;
        const tox = along * kx + aside * mx;
        const toy = along * ky + aside * my;
        const toz = along * kz + aside * mz;
        const rodx = ax + tox - ix;
        const rody = ay + toy - iy;
        const rodz = az + toz - iz;
        const drift =
          rodx * (tx + oy * toz - oz * toy) +
          rody * (ty + oz * tox - ox * toz) +
          rodz * (tz + ox * toy - oy * tox);
        const lever =
          rodx * (ky * toz - kz * toy) +
          rody * (kz * tox - kx * toz) +
          rodz * (kx * toy - ky * tox);
        const spin = -drift / lever;
        const wx = w1 * kx + w2 * mx + w3 * (ky * mz - kz * my);
        const wy = w1 * ky + w2 * my + w3 * (kz * mx - kx * mz);
        slope = 1 / (tz + (ox + spin * kx) * wy - (oy + spin * ky) * wx);
        theta -= off * slope;
      }
    }
    return sum;
  };
}
