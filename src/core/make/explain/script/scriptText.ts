/** The script of the page; `npm run generate` makes it from pageScript.ts and reading.ts. */
export const scriptText = `(function () {
"use strict";
function withinTurn(angleDeg) {
    return ((angleDeg % 360) + 360) % 360;
}
function levelUnder(track, angleDeg) {
    const at = withinTurn(angleDeg);
    let run = track.levels.length - 1;
    for (let i = 0; i < track.startsDeg.length && track.startsDeg[i] <= at; i += 1)
        run = i;
    return track.levels[run];
}
function readingUnder(data, angleDeg) {
    const levels = data.channels.map((channel) => levelUnder(data.tracks[channel.track], angleDeg + channel.angleDeg));
    const word = levels.join('');
    const position = data.words.indexOf(word);
    if (position < 0 || data.words.lastIndexOf(word) !== position) {
        return { levels, word, position: null, headingDeg: null };
    }
    const centreDeg = ((position + 0.5) * 360) / data.positions;
    return {
        levels,
        word,
        position,
        headingDeg: withinTurn(data.northOffsetDeg + data.sense * centreDeg),
    };
}
function comparedReadings(positions, place, aside) {
    const top = positions / 2;
    const right = Math.floor(place) % positions;
    const ahead = Math.floor(place + aside) % positions;
    const binary = (right % top) + (ahead >= top ? top : 0);
    const grayWord = ((right ^ (right >> 1)) % top) + (ahead >= top ? top : 0);
    let gray = 0;
    for (let left = grayWord; left > 0; left >>= 1)
        gray ^= left;
    return { right, binary, gray };
}
function shown(value) {
    return String(Number(value.toFixed(2)));
}
function readingText(reading) {
    if (reading.position === null || reading.headingDeg === null) {
        return 'word ' + reading.word + ', no position of its own';
    }
    const heading = shown(withinTurn(Number(reading.headingDeg.toFixed(2))));
    return 'position ' + reading.position + ', word ' + reading.word + ', heading ' + heading + '°';
}
function comparedText(positions, read, right) {
    const steps = Math.abs(read - right);
    const off = (Math.min(steps, positions - steps) * 360) / positions;
    const says = 'reads position ' + read + ' of ' + positions;
    return off === 0 ? says + ', which is right' : says + ': ' + shown(off) + '° off';
}
function showPlace(window, data, angleDeg) {
    const part = (id) => window.document.getElementById(id);
    const reading = readingUnder(data, angleDeg);
    const move = data.strip
        ? 'translate(' + -angleDeg * data.strip.mmPerDeg + ' 0)'
        : 'rotate(' + -angleDeg + ')';
    part('disc').setAttribute('transform', move);
    reading.levels.forEach((level, channel) => {
        const look = data.litLevel < 0 ? 'colour' : level === data.litLevel ? 'light' : 'dark';
        part('spot-' + channel).setAttribute('class', 'spot ' + look);
        if (data.litLevel < 0)
            part('spot-' + channel).setAttribute('fill', data.levelColours[level] ?? 'none');
        part('digit-' + channel).setAttribute('class', 'digit ' + look);
        part('digit-' + channel).textContent = String(level);
        part('sees-' + channel).textContent = level + ': ' + data.levelNames[level];
    });
    const heading = reading.headingDeg === null ? 'none' : shown(reading.headingDeg) + '°';
    part('word').textContent = reading.word;
    part('position').textContent = reading.position === null ? 'none of its own' : String(reading.position);
    part('heading').textContent = heading;
    part('turn').value = String(angleDeg);
    part('turn').setAttribute('aria-valuetext', readingText(reading));
}
function showCompared(window, data, angleDeg) {
    const part = (id) => window.document.getElementById(id);
    const place = (withinTurn(angleDeg) * data.comparedPositions) / 360;
    const aside = Number(part('aside').value) / 100;
    const read = comparedReadings(data.comparedPositions, place, aside);
    const says = {
        binary: comparedText(data.comparedPositions, read.binary, read.right),
        gray: comparedText(data.comparedPositions, read.gray, read.right),
    };
    const at = 'translate(' + -place * data.comparedCell + ' 0)';
    part('binary-rings').setAttribute('transform', at);
    part('gray-rings').setAttribute('transform', at);
    const ahead = 'translate(' + aside * data.comparedCell + ' 0)';
    part('binary-aside').setAttribute('transform', ahead);
    part('gray-aside').setAttribute('transform', ahead);
    part('binary-says').textContent = says.binary;
    part('gray-says').textContent = says.gray;
    part('compared-turn').value = String(withinTurn(angleDeg));
    part('compared-turn').setAttribute('aria-valuetext', 'binary ' + says.binary + '; Gray ' + says.gray);
    part('aside').setAttribute('aria-valuetext', shown(100 * aside) + ' % of a step; binary ' + says.binary);
}
function keyTurnDeg(key, keyDeg, stepDeg) {
    if (key === 'ArrowRight' || key === 'ArrowUp')
        return keyDeg;
    if (key === 'ArrowLeft' || key === 'ArrowDown')
        return -keyDeg;
    if (key === 'PageUp')
        return stepDeg;
    if (key === 'PageDown')
        return -stepDeg;
    return null;
}
function followHand(stage, data, turnBy) {
    let before = null;
    const angleOf = (event) => {
        const box = stage.getBoundingClientRect();
        const x = event.clientX - box.left - box.width / 2;
        const y = event.clientY - box.top - box.height / 2;
        return (Math.atan2(x, -y) * 180) / Math.PI;
    };
    stage.addEventListener('pointerdown', (event) => {
        before = event;
        stage.setPointerCapture(event.pointerId);
    });
    stage.addEventListener('pointermove', (event) => {
        if (before === null)
            return;
        const box = stage.getBoundingClientRect();
        const pulled = data.strip
            ? ((event.clientX - before.clientX) * data.strip.shownMm) / box.width / data.strip.mmPerDeg
            : withinTurn(angleOf(event) - angleOf(before) + 180) - 180;
        before = event;
        turnBy(-pulled);
    });
    const letGo = () => {
        before = null;
    };
    stage.addEventListener('pointerup', letGo);
    stage.addEventListener('pointercancel', letGo);
}
function chooseTelling(window) {
    const tellings = ['child', 'curious', 'engineer'];
    const part = (id) => window.document.getElementById(id);
    const show = () => {
        for (const telling of tellings)
            part(telling).hidden = !part('tell-' + telling).checked;
    };
    for (const telling of tellings)
        part('tell-' + telling).addEventListener('change', show);
    show();
    const print = (what) => {
        window.document.documentElement.setAttribute('data-print', what);
        window.print();
    };
    part('print-poster').addEventListener('click', () => print('poster'));
    part('print-all').addEventListener('click', () => print('all'));
}
function explainDisc(window) {
    const part = (id) => window.document.getElementById(id);
    const data = JSON.parse(part('data').textContent);
    let angleDeg = data.startDeg;
    const turnTo = (deg) => {
        angleDeg = withinTurn(deg);
        showPlace(window, data, angleDeg);
        showCompared(window, data, angleDeg);
    };
    for (const id of ['turn', 'compared-turn']) {
        const positions = id === 'turn' ? data.positions : data.comparedPositions;
        part(id).addEventListener('input', () => turnTo(Number(part(id).value)));
        part(id).addEventListener('keydown', (event) => {
            const turn = keyTurnDeg(event.key, id === 'turn' ? data.keyDeg : 90 / positions, 360 / positions);
            if (turn === null)
                return;
            event.preventDefault();
            turnTo(angleDeg + turn);
        });
    }
    part('aside').addEventListener('input', () => showCompared(window, data, angleDeg));
    followHand(part('stage'), data, (deg) => turnTo(angleDeg + deg));
    chooseTelling(window);
    turnTo(angleDeg);
}
explainDisc(window);
})();`;
