// make builds an element. What is said in it is always text, never markup.
export function make(name, attributes = {}, ...inside) {
	const element = document.createElement(name);
	for (const [key, value] of Object.entries(attributes)) {
		if (value === undefined || value === null || value === false) continue;
		if (key.startsWith("on")) element.addEventListener(key.slice(2), value);
		else element.setAttribute(key, value === true ? "" : value);
	}
	element.append(...inside.filter((i) => i !== null && i !== undefined && i !== false));
	return element;
}

// fill makes the wanted nodes the parent's children, moving only those that stand elsewhere, so that
// the one being typed in keeps the caret.
export function fill(parent, wanted) {
	wanted = wanted.filter((w) => w !== null && w !== undefined && w !== false);
	const keep = new Set(wanted);
	for (const old of [...parent.childNodes]) if (!keep.has(old)) old.remove();
	wanted.forEach((node, i) => {
		if (parent.childNodes[i] !== node) parent.insertBefore(node, parent.childNodes[i] ?? null);
	});
}

// say sets an element's text, and leaves it alone where it says that already.
export function say(element, text) {
	if (element.textContent !== text) element.textContent = text;
}

export const byId = (id) => document.getElementById(id);

// press makes a button that reads as a part of the text.
export function press(text, action, attributes = {}) {
	return make("button", { type: "button", onclick: action, ...attributes }, text);
}

// after returns a function that does something once it has not been called for a while.
export function after(pause, action) {
	let timer;
	return (...given) => {
		clearTimeout(timer);
		timer = setTimeout(() => action(...given), pause);
	};
}
