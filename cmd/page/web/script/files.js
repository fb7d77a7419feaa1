// download hands a file to the browser to keep.
export function download(name, bytes, type) {
	const address = URL.createObjectURL(new Blob([bytes], { type }));
	const link = document.createElement("a");
	link.href = address;
	link.download = name;
	document.body.append(link);
	link.click();
	link.remove();
	setTimeout(() => URL.revokeObjectURL(address), 60000);
}
