// The page's one accent is a paint of the job, darkened until text in it can be read on white.

const parts = (hex) => [1, 3, 5].map((i) => parseInt(hex.slice(i, i + 2), 16));

// luminance is the relative luminance of WCAG 2.2.
function luminance(rgb) {
	const [r, g, b] = rgb.map((v) => {
		const c = v / 255;
		return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
	});
	return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

const onWhite = (rgb) => 1.05 / (luminance(rgb) + 0.05);

// readable returns the colour nearest to one that has so much contrast on white.
export function readable(hex, contrast = 5) {
	let rgb = parts(hex);
	while (onWhite(rgb) < contrast) rgb = rgb.map((v) => v * 0.96);
	return "#" + rgb.map((v) => Math.round(v).toString(16).padStart(2, "0")).join("");
}

export function accent(hex) {
	if (/^#[0-9a-f]{6}$/i.test(hex ?? "")) document.documentElement.style.setProperty("--accent", readable(hex));
	else document.documentElement.style.removeProperty("--accent");
}
