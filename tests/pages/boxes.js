// Asks the browser where every text of a page or drawing stands. The driver page has a frame a file;
// each is measured as on paper (the style's print rules, the width of A4 within its margins) and
// pages on a screen as well. What is wrong is written as lines, "FILE: what".
"use strict";
const lines = [];
let texts = 0;

function wrong(file, what) { lines.push(file + ": " + what); }

// As the style sheet has it for one medium.
function medium(sheet, name) {
    for (const rule of sheet.cssRules) {
        if (!(rule instanceof sheet.ownerNode.ownerDocument.defaultView.CSSMediaRule)) continue;
        rule.kept = rule.kept || rule.media.mediaText;
        rule.media.mediaText = rule.kept === name ? "all" : "not all";
    }
}

function luminance(colour) {
    const parts = colour.match(/[\d.]+/g).slice(0, 3).map((part) => {
        const c = part / 255;
        return c <= 0.03928 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    });
    return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2];
}

// WCAG 2.1, 1.4.3
function contrast(a, b) {
    const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x);
    return (high + 0.05) / (low + 0.05);
}

function seen(colour) { return colour !== "none" && !/, 0\)$/.test(colour); }

// The last shape before the text that holds its middle; without one, the page's own ground.
function ground(view, element, box) {
    const svg = element.closest("svg");
    let found = "rgb(255, 255, 255)";
    if (svg) {
        const x = (box.left + box.right) / 2, y = (box.top + box.bottom) / 2;
        for (const shape of svg.querySelectorAll("rect, circle, polygon, text")) {
            if (shape === element) break;
            if (shape.tagName === "text") continue;
            const at = shape.getBoundingClientRect(), fill = view.getComputedStyle(shape).fill;
            if (seen(fill) && at.left <= x && at.right >= x && at.top <= y && at.bottom >= y) found = fill;
        }
        return found;
    }
    for (let up = element; up; up = up.parentElement) {
        const fill = view.getComputedStyle(up).backgroundColor;
        if (seen(fill)) return fill;
    }
    return found;
}

// Boxes of what is inked: a browser's line boxes are taller than the letters. The baseline is taken
// to lie where the font's ascent ends.
function inked(rect, size) {
    const middle = (rect.top + rect.bottom) / 2;
    return { left: rect.left, right: rect.right, top: middle - 0.45 * size, bottom: middle + 0.45 * size };
}

function overlap(a, b) {
    const slack = 0.75;
    return a.left < b.right - slack && b.left < a.right - slack && a.top < b.bottom - slack && b.top < a.bottom - slack;
}

function apart(file, boxes) {
    boxes.sort((a, b) => a.top - b.top);
    for (let i = 0; i < boxes.length; i++)
        for (let j = i + 1; j < boxes.length && boxes[j].top < boxes[i].bottom; j++)
            if (boxes[i].node !== boxes[j].node && overlap(boxes[i], boxes[j]))
                wrong(file, '"' + boxes[i].text + '" and "' + boxes[j].text + '" overlap');
}

function drawing(file, view, svg, least) {
    const frame = svg.getBoundingClientRect(), boxes = [];
    const scale = frame.width / svg.viewBox.baseVal.width;
    for (const text of svg.querySelectorAll("text")) {
        const rect = text.getBoundingClientRect(), turned = text.hasAttribute("transform");
        const size = parseFloat(text.getAttribute("font-size")) * scale;
        const box = turned ? rect : inked(rect, size);
        texts++;
        if (box.left < frame.left - 0.5 || box.right > frame.right + 0.5 || box.top < frame.top - 0.5 || box.bottom > frame.bottom + 0.5)
            wrong(file, '"' + text.textContent + '" leaves its drawing');
        if (size < least - 0.02) wrong(file, '"' + text.textContent + '" is ' + size.toFixed(2) + " px, least " + least);
        const ratio = contrast(view.getComputedStyle(text).fill, ground(view, text, box));
        if (ratio < 4.5) wrong(file, '"' + text.textContent + '" has a contrast of ' + ratio.toFixed(2));
        boxes.push({ left: box.left, right: box.right, top: box.top, bottom: box.bottom, node: text, text: text.textContent });
    }
    apart(file, boxes);
}

function words(file, view, width, least) {
    const page = view.document, boxes = [];
    const walker = page.createTreeWalker(page.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
        const parent = node.parentElement, style = view.getComputedStyle(parent);
        if (!node.textContent.trim() || parent.closest("svg, script, .heard")) continue;
        const range = page.createRange(), size = parseFloat(style.fontSize), text = node.textContent.trim().slice(0, 60);
        range.selectNodeContents(node);
        texts++;
        if (size < least - 0.02) wrong(file, '"' + text + '" is ' + size + " px, least " + least);
        if (contrast(style.color, ground(view, parent, null)) < 4.5) wrong(file, '"' + text + '" has too little contrast');
        const holder = parent.closest("td, th, .card");
        const cell = holder ? holder.getBoundingClientRect() : { left: 0, right: width };
        for (const rect of range.getClientRects()) {
            if (rect.width === 0) continue;
            if (rect.left < cell.left - 0.75 || rect.right > cell.right + 0.75) wrong(file, '"' + text + '" leaves its place');
            boxes.push(Object.assign(inked(rect, size), { node: node, text: text }));
        }
    }
    apart(file, boxes);
}

// Marks are shapes, no text: they are left out.
function measure(frame, font) {
    const view = frame.contentWindow, page = view.document, file = frame.dataset.name;
    const style = page.createElementNS("http://www.w3.org/1999/xhtml", "style");
    style.textContent = ':root { overflow: hidden } body, svg, g, text { font-family: "' + font + '", sans-serif !important }';
    page.documentElement.append(style);
    if (page.documentElement.tagName === "svg") {
        drawing(file, view, page.documentElement, 14);
        return;
    }
    for (const [name, width, least] of [["print", 718, 12], ["print", 740, 12], ["screen", 1000, 14]]) {
        frame.width = width;
        for (const sheet of page.styleSheets) medium(sheet, name);
        const label = file + " (" + name + ", " + width + " px, " + font + ")";
        words(label, view, width, least);
        if (page.documentElement.scrollWidth > width) wrong(label, "is " + page.documentElement.scrollWidth + " px wide");
        for (const svg of page.querySelectorAll("svg:not(.mark)")) drawing(label, view, svg, least);
    }
}

window.onload = () => {
    const font = document.documentElement.dataset.font;
    for (const frame of document.querySelectorAll("iframe")) measure(frame, font);
    lines.push("texts " + texts);
    const out = document.createElement("pre");
    out.id = "found";
    out.textContent = lines.join("\n");
    document.body.replaceChildren(out);
};
