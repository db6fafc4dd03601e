import type { NumberWords, Sentence, WordParams } from '../types.js';

/** Rates of the trade are whole hertz; a broken header may hold anything. */
const rate = (n: NumberWords, value: WordParams[string]): string => `${n.significant(Number(value), 6)} Hz`;
const plural = (count: unknown, one: string, many = `${one}s`): string => (Number(count) === 1 ? one : many);

/** Why a file or its samples are refused: what, why, and what to do. */
export const fileErrors: Readonly<Record<string, Sentence>> = {
  'file-empty': () => 'The file is empty: it has no bytes. Export it again.',
  'too-long': (p, n) =>
    `The file is too long: ${n.number(p.seconds, 0)} s in ${n.text(p.channels)} ${plural(p.channels, 'channel')}, more than is held in memory. At most ${n.number(p.limitSeconds, 0)} s fit at this rate; an impulse response needs a few seconds.`,
  'too-short': (p, n) =>
    `The recording is too short to say anything about the bass: it lasts ${n.seconds(p.seconds)} (${n.integer(p.samples)} ${plural(p.samples, 'sample')}), and at least ${n.seconds(p.neededSeconds)} are needed. Export the whole impulse response.`,
  'no-samples': () => 'The file has a header but not one sample behind it. Export it again.',
  silent: (p, n) =>
    Number(p.channels) === 1
      ? 'The recording is silent: every sample is the same number. Check that the microphone channel was recorded.'
      : `All ${n.text(p.channels)} channels are silent: every sample is the same number. Check that the microphone channel was recorded.`,
  'not-finite': (p, n) =>
    `Channel ${n.text(p.channel)} holds ${n.integer(p.count)} ${plural(p.count, 'sample')} that ${Number(p.count) === 1 ? 'is not a number' : 'are not numbers'} (the first at ${n.seconds(p.firstSeconds, 3)}), so nothing can be computed from it. Export the file again.`,
  'channel-range': (p, n) =>
    `Channel ${n.text(p.channel)} was asked for, but the file has ${n.text(p.count)} ${plural(p.count, 'channel')}, counted from 1.`,
  'only-loopback': (p, n) =>
    `All ${n.text(p.count)} channels look like a loopback: over 90 % of the energy of each lies within 2 ms, as of a cable and not of a room. If one of them is a very dry room, name its channel.`,
  rate: (p, n) =>
    `A sample rate of ${rate(n, p.rate)} is outside what is read (${rate(n, p.lowest)} to ${rate(n, p.highest)}). Check the rate given with the samples.`,
  'lengths-differ': (p, n) =>
    `Channel ${n.text(p.channel)} has ${n.integer(p.samples)} samples where the first has ${n.integer(p.expected)}; all channels must be equally long.`,

  'wav-not-riff': (p, n) =>
    `This is not a WAV file: it begins with “${n.text(p.found)}” where a WAV file begins with “RIFF”. Export the impulse response as WAV (PCM or float).`,
  'wav-not-wave': (p, n) =>
    `This is a RIFF file, but of the kind “${n.text(p.found)}” and not “WAVE”. Export the impulse response as WAV (PCM or float).`,
  'wav-big-endian': () =>
    'This WAV file is of the rare big-endian kind (RIFX), which is not read. Export it as an ordinary WAV file.',
  'wav-truncated-header': (p, n) =>
    `The file ends within its own header, after ${n.integer(p.bytes)} ${plural(p.bytes, 'byte')}. It was cut off in copying; copy or export it again.`,
  'wav-no-format': () =>
    'The WAV file does not say what its samples are: it has no format chunk (“fmt ”). Export it again.',
  'wav-format-short': (p, n) =>
    `The WAV file's format chunk has ${n.integer(p.bytes)} bytes where ${n.integer(p.needed)} are needed, so its samples cannot be read. Export it again.`,
  'wav-no-data': () => 'The WAV file has no samples: its data chunk is missing. Export it again.',
  'wav-codec-unsupported': (p, n) =>
    `The samples are stored as ${n.text(p.codec)} (format ${n.text(p.tag)}), which is not read. Export the impulse response as PCM or float WAV; compression that loses detail would spoil its decay.`,
  'wav-bits': (p, n) =>
    `Samples of ${n.text(p.bits)} bits (${n.text(p.encoding) === 'float' ? 'float' : 'integer'}) are not read. Integer samples of 8, 16, 24 or 32 bits and float samples of 32 or 64 bits are.`,
  'wav-rate': (p, n) =>
    `The file says its sample rate is ${rate(n, p.rate)}, outside what is read (${rate(n, p.lowest)} to ${rate(n, p.highest)}). Its header is probably broken; export it again.`,
  'wav-channels': (p, n) =>
    Number(p.channels) === 0
      ? 'The file says it has no channel at all. Its header is broken; export it again.'
      : `The file says it has ${n.text(p.channels)} channels; at most ${n.text(p.highest)} are read. Its header is probably broken; export it again.`,
  'wav-frame-size': (p, n) =>
    `The file's header contradicts itself: ${n.text(p.frameBytes)} bytes per frame do not fit ${n.text(p.channels)} ${plural(p.channels, 'channel')} of ${n.text(p.bits)} bits. Export it again.`,
  'container-unread': (p, n) =>
    `The file is ${n.text(p.container)}, which is not read here. Export the impulse response as WAV (PCM or float), or as text of one or two columns.`,
  'container-browser': (p, n) =>
    `The file is ${n.text(p.container)}, which is read in the page of a browser only. Convert it to WAV, which holds the same samples.`,
  'container-lossy': (p, n) =>
    `The file is ${n.text(p.container)}, which usually drops what it takes to be inaudible: a decay read from it would not be the room's. Export the impulse response as WAV or FLAC.`,
  'container-decode': (p, n) =>
    `This browser could not decode the ${n.text(p.container)} file as it is (${n.text(p.detail)}). Convert it to WAV, which holds the same samples.`,
  'flac-header': () =>
    'The FLAC file does not begin with its sample rate and length, as every FLAC file does. Export it again.',
  'sofa-unreadable': (p, n) =>
    `The AES69 (SOFA) file is broken, or is written in a way that is not read here (${n.text(p.detail)}). Save it again with current software, or export the impulse response as WAV.`,
  'sofa-not': () =>
    'The file is HDF5, but holds no impulse responses as AES69 (SOFA) lays them out. Export the impulse response as WAV.',
  'sofa-data-type': (p, n) =>
    `The AES69 (SOFA) file holds data of type “${n.text(p.dataType)}”, not impulse responses (FIR). Export the impulse responses.`,
  'sofa-free-field': (p, n) =>
    `The AES69 (SOFA) file (${n.text(p.conventions)}) says that it was measured in free field: there is no room in it. Choose a file measured in a room.`,
  'sofa-measurement': (p, n) =>
    `The AES69 (SOFA) file has ${n.integer(p.count)} ${plural(p.count, 'measurement')}; number ${n.text(p.measurement)} was asked for. They count from 1.`,
  'measurement-none': (p, n) =>
    `Measurement ${n.text(p.measurement)} was asked for, but only AES69 (SOFA) files hold several. Leave it out.`,
  'sofa-slow': (p, n) =>
    `Reading the AES69 (SOFA) file was stopped after ${n.number(p.seconds, 0)} s: it is broken, or too large to be read in a page. Use the command, or export one impulse response as WAV.`,
  'sofa-worker': () =>
    'No worker can be made here, and an AES69 (SOFA) file is read only in one that can be stopped. Export the impulse response as WAV, or use the command.',
  'sofa-apart': () =>
    'The file is AES69 (SOFA), which needs a reader of its own: it is opened by a study, by the command, or by openFile of the engine.',
  'text-line': (p, n) =>
    `Line ${n.text(p.line)} of the text file is not one or two numbers like the lines before it: “${n.text(p.text)}”. Remove it, or mark it as a comment with #.`,
  'text-too-large': (p, n) =>
    `The text has ${n.number(p.megabytes, 0)} MB, more than is read as text (${n.number(p.mostMegabytes, 0)} MB). Export the impulse response as WAV, or fewer lines of it.`,
  'text-columns': (p, n) =>
    `Line ${n.text(p.line)} has ${n.text(p.columns)} columns. A text file holds the amplitude in one column, or time and amplitude in two.`,
  'text-ambiguous': () =>
    'The commas of the text file may part columns or mark decimals, and nothing tells which. Part the columns with semicolons or tabs.',
  'text-times-uneven': (p, n) =>
    `The times of the text file are not evenly spaced (line ${n.text(p.line)}), so they give no sample rate. Export the impulse response itself, not a plot of it.`,
  'text-rate-needed': () =>
    'The text file has one column, so its sample rate must be given beside it (“rate”), or a column of times in front.',
  'file-rate-differs': (p, n) =>
    `The sample rate given is ${rate(n, p.rate)}, but the file itself says ${rate(n, p.found)}. Leave it out, or mend the file's header.`,
  'text-rate-differs': (p, n) =>
    `The sample rate given is ${rate(n, p.rate)}, but the times of the text file say ${rate(n, p.found)}. One of them is wrong.`,
  'sweep-bounds': (p, n) =>
    `The sweep's ${n.text(p.name)} is ${n.significant(p.value)}, and must lie from ${n.significant(p.from)} to ${n.significant(p.to)}.`,
  'sweep-not-exponential': () =>
    'The sweep file holds no exponential sweep: its frequency does not rise by a constant ratio per second. Give the file that was played; “ringdown sweep” makes one.',
  'sweep-rate': (p, n) =>
    `The recording has ${rate(n, p.rate)} and the sweep ${rate(n, p.sweepRate)}. Record at the rate of the sweep, or make the sweep at that of the recording.`,
  'sweep-recording-short': (p, n) =>
    `The recording lasts ${n.seconds(p.seconds)}, less than the sweep itself (${n.seconds(p.neededSeconds)}). Record until the room has fallen silent after the sweep.`,
  'microphone-none': () =>
    'The file of the microphone holds no response: fewer than two lines of frequency and level were found. It must be text, with the frequency in Hz and the level in dB on each line.',
  'microphone-columns': (p, n) =>
    `Line ${n.text(p.line)} of the file of the microphone has ${n.integer(p.columns)} ${plural(p.columns, 'column')}. Frequency (Hz) and level (dB) are read, and a phase behind them is passed over.`,
  'microphone-order': (p, n) =>
    `The frequencies in the file of the microphone must rise from line to line; line ${n.text(p.line)} has ${n.significant(p.frequencyHz)} Hz. Give the file as it came with the microphone.`,
  'microphone-level': (p, n) =>
    `Line ${n.text(p.line)} of the file of the microphone says ${n.significant(p.levelDb)} dB, and no microphone is more than ${n.significant(p.mostDb)} dB off. Levels must be dB re the response at the reference frequency, not a sensitivity.`,
  'calibration-range': (p, n) =>
    `The calibration says that full scale is ${n.significant(p.fullScaleDb)} dB re 20 µPa; it must lie from ${n.significant(p.lowest)} to ${n.significant(p.highest)} dB. Give the sound pressure level of a sine that just reaches full scale.`,
  'write-clips': (p, n) =>
    `The samples reach ${n.significant(p.peak)} times full scale, which ${n.text(p.encoding)} cannot hold without clipping. Write a float file instead.`,
  'write-not-finite': (p, n) =>
    `Channel ${n.text(p.channel)} holds samples that are not numbers and cannot be written.`,
};
