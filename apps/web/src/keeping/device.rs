//! What `static/device.js` lends to the page: storage, locks, time, chance, files, fields.

use heapwright_journal::Moment;
use js_sys::{Array, Function, Promise, Uint8Array};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{JsValue, wasm_bindgen};

// `static/boot.js` puts the module there before it starts this one.
#[wasm_bindgen(js_namespace = heapwright_device)]
extern "C" {
    #[wasm_bindgen(catch)]
    pub async fn blocks(behind: f64, most: u32) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch)]
    pub async fn tail(behind: f64) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch)]
    pub async fn write(
        expected: f64,
        emptied: bool,
        block_rows: &Array,
        tail_rows: &Array,
    ) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch)]
    pub async fn get(store: &str, key: &str) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch)]
    pub async fn put(store: &str, key: &str, value: &JsValue) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch)]
    pub async fn lock() -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch)]
    pub async fn lasting(ask: bool) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch)]
    pub async fn slice(file: &JsValue, from: f64, to: f64) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch)]
    pub async fn beside(name: &str) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch)]
    pub async fn shrunk(file: &JsValue) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch, js_name = room)]
    async fn room_numbers() -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch, js_name = startReminding)]
    pub async fn start_reminding() -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch, js_name = stopReminding)]
    pub async fn stop_reminding() -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch)]
    pub async fn remind(list: &str) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch, js_name = remindAnew)]
    pub async fn remind_anew(question: &str) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch)]
    pub fn reminding() -> Result<String, JsValue>;
    #[wasm_bindgen(catch, js_name = languageChosen)]
    pub fn language_chosen() -> Result<String, JsValue>;
    #[wasm_bindgen(catch, js_name = chooseLanguage)]
    pub fn choose_language(tag: &str) -> Result<(), JsValue>;
    #[wasm_bindgen(catch)]
    pub async fn install() -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch, js_name = lookForUpdate)]
    pub async fn look_for_update() -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch, js_name = pictureLines)]
    pub async fn picture_lines(file: &JsValue) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(js_name = pictureIn)]
    pub fn picture_in(line: &JsValue) -> JsValue;
    #[wasm_bindgen(js_name = pictureLine)]
    pub fn picture_line(sha256: &str, bytes: &Uint8Array) -> JsValue;
    pub fn halves() -> bool;
    pub fn remember(count: u32);
    pub fn remembered() -> u32;
    #[wasm_bindgen(js_name = isInstalled)]
    pub fn is_installed() -> bool;
    #[wasm_bindgen(js_name = canInstall)]
    pub fn can_install() -> bool;
    #[wasm_bindgen(js_name = updateWaits)]
    pub fn update_waits() -> bool;
    #[wasm_bindgen(js_name = takeUpdate)]
    pub fn take_update();
    #[wasm_bindgen(js_name = isEntering)]
    pub fn is_entering() -> bool;
    pub fn breath() -> Promise;
    pub fn painted() -> Promise;
    pub fn turn() -> Promise;
    pub fn mark(name: &str);
    pub fn tell();
    pub fn listen(hear: &Function);
    fn random(count: u32) -> Uint8Array;
    fn moment(local: &str) -> Array;
    pub fn value(id: &str) -> String;
    #[wasm_bindgen(js_name = ticked)]
    fn ticked_words(name: &str) -> String;
    pub fn chosen(id: &str, keep: bool) -> JsValue;
    pub fn save(name: &str, parts: &Array, media_type: &str);
    pub fn shown(bytes: &Uint8Array) -> String;
    pub fn hidden(address: &str);
    pub fn simulate(question: &str, hear: &Function) -> bool;
    pub fn stop();
    pub fn ask(question: &str, hear: &Function) -> bool;
    pub fn press(name: &str, question: &str, document: &str, letter: bool, hear: &Function)
    -> bool;
}

/// How many bytes the page uses, and how many the browser allows it; `None` when it does not tell.
pub async fn room() -> Option<(f64, f64)> {
    let pair: Array = room_numbers().await.ok()?.dyn_into().ok()?;
    Some((pair.get(0).as_f64()?, pair.get(1).as_f64()?))
}

/// Random bytes from the browser.
pub fn chance<const COUNT: usize>() -> [u8; COUNT] {
    let mut bytes = [0; COUNT];
    let count = u32::try_from(COUNT).unwrap_or(0);
    random(count).copy_to(&mut bytes);
    bytes
}

/// What the clock of the device says.
pub fn now() -> Moment {
    at("").unwrap_or(Moment {
        instant_ms: 0,
        offset_min: 0,
    })
}

/// The moment of a local time as its field has it ("2026-05-01T18:00"); of now when empty.
#[allow(clippy::cast_possible_truncation)] // The browser's time is a whole number far below 2^53.
pub fn at(local: &str) -> Option<Moment> {
    let pair = moment(local);
    let (instant_ms, offset_min) = (pair.get(0).as_f64()?, pair.get(1).as_f64()?);
    (instant_ms.is_finite() && offset_min.is_finite())
        .then(|| Moment::new(instant_ms as i64, offset_min as i16))?
}

/// The indices that are ticked under a name.
pub fn ticked(name: &str) -> Vec<usize> {
    ticked_words(name)
        .split(' ')
        .filter_map(|word| word.parse().ok())
        .collect()
}
