// Pictures come as SVG that the program wrote. Each is put into a shadow tree of its own, where its
// names meet no others, and only the marks that the program draws are let in.
const drawn = new Set(["svg", "g", "defs", "path", "use", "text", "tspan", "title", "metadata", "rect", "circle", "clipPath", "symbol", "image"]);

// suspect finds what a picture might hold beside such marks; looking at each mark takes longer.
const suspect = new RegExp(`<(?!/|\\?xml|(?:${[...drawn].join("|")})[\\s>/])|[\\s"']on|style=|href="(?!#|data:image/png;)`);

function clean(node) {
	for (const child of [...node.children]) {
		if (!drawn.has(child.localName)) child.remove();
		else clean(child);
	}
	for (const { name, value } of [...node.attributes]) {
		const link = name === "href" || name === "xlink:href";
		if (name.startsWith("on") || name === "style" || (link && !value.startsWith("#") && !value.startsWith("data:image/png;"))) node.removeAttribute(name);
	}
}

// show puts a picture into a host element, and returns its width to its height; 0 where it is none.
export function show(host, svg, names = "") {
	const parsed = new DOMParser().parseFromString(svg, "image/svg+xml");
	const root = parsed.documentElement;
	if (root.localName !== "svg") return 0;
	if (suspect.test(svg)) clean(root);
	root.querySelector("title")?.remove();
	root.removeAttribute("width");
	root.removeAttribute("height");
	root.setAttribute("width", "100%");
	root.setAttribute("height", "100%");
	root.setAttribute("aria-hidden", "true");
	root.setAttribute("focusable", "false");
	const shadow = host.shadowRoot ?? host.attachShadow({ mode: "open" });
	shadow.replaceChildren(document.adoptNode(root));
	if (names) host.setAttribute("aria-label", names);
	const { width, height } = root.viewBox.baseVal;
	return width / height;
}
