import { fill, make } from "./dom.js";
import { job } from "./job.js";
import { tellNow } from "./live.js";

// Zones and prints at places of their own are moved on the picture: by mouse, by finger, or by the
// arrow keys, a millimetre at a time, ten with shift.
const known = new Map(); // path -> handle
let held = null; // the handle being dragged

export function handles(part, state) {
	const box = state.picture.box;
	const wanted = [...(state.zones ?? []), ...(state.placed ?? []).map((p, i) => ({ ...p, name: `print ${i + 1}` }))].map((thing) => {
		const handle = known.get(thing.path) ?? build(thing.path);
		handle.thing = thing;
		handle.box = box;
		if (held !== handle) place(handle, thing.x, thing.y);
		handle.button.style.width = `${100 * thing.w / box.w}%`;
		handle.button.style.height = `${100 * thing.h / box.h}%`;
		handle.button.classList.toggle("print", thing.path.includes(".pass."));
		handle.button.setAttribute("aria-label", `${thing.name}: ${where(thing)}. Arrow keys move it by 1 mm, with shift by 10.`);
		return handle.button;
	});
	fill(part.over, wanted);
}

const where = (thing) => `${round(thing.at.x)} mm from the left, ${round(thing.at.y)} mm from the top`;
const round = (v) => Math.round(v * 100) / 100;

function place(handle, x, y) {
	handle.button.style.left = `${100 * (x - handle.box.x) / handle.box.w}%`;
	handle.button.style.top = `${100 * (y - handle.box.y) / handle.box.h}%`;
}

function build(path) {
	const handle = { path };
	const button = make("button", { type: "button", class: "handle" });
	handle.button = button;
	known.set(path, handle);
	button.addEventListener("pointerdown", (e) => {
		if (e.button !== 0) return;
		button.setPointerCapture(e.pointerId);
		const size = button.parentElement.getBoundingClientRect();
		held = handle;
		handle.from = { x: e.clientX, y: e.clientY, at: { ...handle.thing.at }, corner: { x: handle.thing.x, y: handle.thing.y }, mm: handle.box.w / size.width };
	});
	button.addEventListener("pointermove", (e) => {
		if (held !== handle) return;
		const { from } = handle;
		move(handle, Math.round((e.clientX - from.x) * from.mm), Math.round((e.clientY - from.y) * from.mm), from);
	});
	const drop = () => {
		if (held !== handle) return;
		held = null;
		if (handle.moved) tellNow(`${handle.thing.name}: ${where({ at: handle.moved })}`);
		handle.moved = null;
	};
	button.addEventListener("pointerup", drop);
	button.addEventListener("pointercancel", drop);
	button.addEventListener("keydown", (e) => {
		const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[e.key];
		if (!way) return;
		e.preventDefault();
		const step = e.shiftKey ? 10 : 1;
		const { thing } = handle;
		move(handle, way[0] * step, way[1] * step, { at: { ...thing.at }, corner: { x: thing.x, y: thing.y } });
		// The next press goes on from here, drawn or not.
		handle.thing = { ...thing, at: handle.moved, x: thing.x + way[0] * step, y: thing.y + way[1] * step };
		tellNow(`${thing.name}: ${where({ at: handle.moved })}`);
		handle.moved = null;
	});
	return handle;
}

// move puts a thing so many millimetres from where it was, to whole millimetres.
function move(handle, across, down, from) {
	const at = { x: round(from.at.x + across), y: round(from.at.y + down) };
	const mirrored = handle.thing.mirrored ? -1 : 1;
	at.x = round(from.at.x + across * mirrored);
	if (handle.moved && at.x === handle.moved.x && at.y === handle.moved.y) return;
	if (at.x === from.at.x && at.y === from.at.y && !handle.moved) return;
	handle.moved = at;
	place(handle, from.corner.x + across, from.corner.y + down);
	const turned = handle.thing.turn ? ` turned ${handle.thing.turn}` : "";
	const zone = handle.path.includes(".keep-clear.");
	job.edit([{ path: zone ? `${handle.path}.at` : handle.path, value: `${at.x} x ${at.y} mm${zone ? "" : turned}` }], `drag ${handle.path}`);
}
