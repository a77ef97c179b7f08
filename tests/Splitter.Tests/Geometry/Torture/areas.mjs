// Areas of unions, intersections and differences of polygons that are hard to cut, by an engine that is neither ours nor .NET's:
// npm's clipper2-wasm 0.4.0, C++ compiled (Boost licence). Writes areas.csv; PolygonTortureTests draws the same polygons and compares.
//   npm install --no-save clipper2-wasm@0.4.0 && node areas.mjs
import { writeFileSync } from "node:fs";
import { createRequire } from "node:module";

const engine = await createRequire(import.meta.url)("clipper2-wasm/dist/umd/clipper2z.js")();
const PAIRS = 2000;

// Numerical Recipes' linear congruential generator, whose whole state is 32 bits: the same numbers in every language.
let state = 1;
const next = (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 4294967296) * below);
};

const ring = (kind, first) => {
    const points = [];
    if (kind === 2 && first) {
        // The first ring once more, each corner moved by one unit at most: edges lie on each other nearly everywhere.
        for (const p of first) points.push({ x: p.x + next(3) - 1, y: p.y + next(3) - 1 });
        return points;
    }
    const corners = 3 + next(kind === 0 ? 12 : 24);
    for (let i = 0; i < corners; i++)
        if (kind === 1)
            // Few places: corners on corners, edges on edges.
            points.push({ x: next(9) * 1250, y: next(9) * 1250 });
        else if (kind === 3)
            // Needles: edges of ten thousand units that are a few apart.
            points.push({ x: (i % 2) * 10000 + next(5), y: next(400) });
        else points.push({ x: next(10001), y: next(10001) });
    return points;
};

const lines = [];
for (let pair = 0; pair < PAIRS; pair++) {
    const kind = pair % 4;
    const a = ring(kind);
    const b = ring(kind, a);
    for (const name of ["NonZero", "EvenOdd"]) {
        const rule = engine.FillRule[name];
        const inside = (points) => {
            const paths = new engine.Paths64();
            paths.push_back(engine.MakePath64(points.flatMap((p) => [BigInt(p.x), BigInt(p.y)])));
            return engine.UnionSelf64(paths, rule);
        };
        const area = (paths) => Math.abs(engine.AreaPaths64(paths));
        const [inA, inB] = [inside(a), inside(b)];
        const both = engine.FillRule.NonZero;
        lines.push([
            pair,
            name,
            area(inA),
            area(inB),
            area(engine.Intersect64(inA, inB, both)),
            area(engine.Union64(inA, inB, both)),
            area(engine.Difference64(inA, inB, both)),
        ].join(","));
    }
}
writeFileSync(new URL("areas.csv", import.meta.url), `pair,rule,a,b,intersection,union,difference\n${lines.join("\n")}\n`);
