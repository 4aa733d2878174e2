// Colours as they are on the page: what lies behind an element, and how far two are apart.

/** Puts `window.colours` in the page: rgba, over, behind, opacityOf, ratio. */
export const withColours = (page) => page.evaluate(() => {
  const canvas = new OffscreenCanvas(1, 1).getContext("2d", { willReadFrequently: true });
  const parsed = new Map();
  const rgba = (colour) => {
    if (!parsed.has(colour)) {
      canvas.clearRect(0, 0, 1, 1);
      canvas.fillStyle = colour;
      canvas.fillRect(0, 0, 1, 1);
      const [red, green, blue, alpha] = canvas.getImageData(0, 0, 1, 1).data;
      parsed.set(colour, [red, green, blue, alpha / 255]);
    }
    return parsed.get(colour);
  };
  const over = (top, below, opacity = 1) => {
    const alpha = top[3] * opacity;
    return [0, 1, 2].map((band) => top[band] * alpha + below[band] * (1 - alpha)).concat(1);
  };
  const behind = (element) => {
    const layers = [];
    for (let at = element; at; at = at.parentElement) layers.push(rgba(getComputedStyle(at).backgroundColor));
    return layers.reduceRight((below, layer) => over(layer, below), [255, 255, 255, 1]);
  };
  const opacityOf = (element) => {
    let product = 1;
    for (let at = element; at; at = at.parentElement) product *= Number(getComputedStyle(at).opacity);
    return product;
  };
  const light = ([red, green, blue]) => [red, green, blue]
    .map((band) => band / 255).map((band) => (band <= 0.04045 ? band / 12.92 : ((band + 0.055) / 1.055) ** 2.4))
    .reduce((sum, band, index) => sum + band * [0.2126, 0.7152, 0.0722][index], 0);
  const ratio = (one, other) => {
    const [high, low] = [light(one), light(other)].sort((left, right) => right - left);
    return (high + 0.05) / (low + 0.05);
  };
  window.colours = { rgba, over, behind, opacityOf, ratio };
});
