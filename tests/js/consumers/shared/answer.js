/** One answer, as the text of its bits. */
export function answer(heat) {
  const { time_s } = heat.timeToCool({
    water_c: 82.5,
    to_c: 61,
    cooling_per_min: 0.0065,
    surroundings: { room_c: 19, humidity_pct: 55, cover: "open" },
  });
  return new BigUint64Array(Float64Array.of(time_s).buffer)[0].toString(16).padStart(16, "0");
}
