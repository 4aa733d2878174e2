//! Files that get their name when all is written, so that nothing half written is ever found.

use std::fs::{self, File};
use std::io::{self, BufWriter, IsTerminal, Write};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};
use std::thread;

use crate::failure::Failure;

/// Exit code of a program that Ctrl-C ended: 128 and the number of the signal.
const INTERRUPTED: i32 = 130;

/// The file that is being written, to be taken away when the keeper presses Ctrl-C.
static UNFINISHED: Mutex<Option<PathBuf>> = Mutex::new(None);

fn unfinished(path: Option<PathBuf>) {
    *UNFINISHED.lock().unwrap_or_else(PoisonError::into_inner) = path;
}

/// From here on Ctrl-C takes away what is half written before it ends the program.
///
/// # Errors
///
/// When the system does not let the program listen for it.
fn leave_nothing_behind() -> Result<(), Failure> {
    let failed = |error: io::Error| {
        Failure::Outside(format!(
            "Ctrl-C cannot be listened for ({error}): start again"
        ))
    };
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .map_err(failed)?;
    // Listening begins before anything is computed, not when the thread gets to it.
    #[cfg(unix)]
    let mut pressed = {
        let _inside = runtime.enter();
        tokio::signal::unix::signal(tokio::signal::unix::SignalKind::interrupt()).map_err(failed)?
    };
    thread::spawn(move || {
        runtime.block_on(async {
            #[cfg(unix)]
            let heard = pressed.recv().await.is_some();
            #[cfg(not(unix))]
            let heard = tokio::signal::ctrl_c().await.is_ok();
            if heard {
                // The lock is kept, so that nothing gets its name from here on.
                let half = UNFINISHED.lock().unwrap_or_else(PoisonError::into_inner);
                if let Some(path) = half.as_ref() {
                    let _ = fs::remove_file(path);
                }
                if io::stderr().is_terminal() {
                    let _ = writeln!(io::stderr());
                }
                std::process::exit(INTERRUPTED);
            }
        });
    });
    Ok(())
}

/// Refuses a file that must not be written, before anybody waits for what would be in it.
///
/// # Errors
///
/// When it is a folder, or there already and not to be replaced.
pub fn check_free(path: &Path, replace: bool) -> Result<(), Failure> {
    if path.is_dir() {
        return Err(Failure::Input(format!(
            "{} is a folder: name a file in it",
            path.display()
        )));
    }
    if path.exists() && !replace {
        return Err(Failure::Input(format!(
            "{} is there already: choose another name, or say --replace",
            path.display()
        )));
    }
    Ok(())
}

/// Computes an answer that may take long and writes it to a file or to standard output, whole or
/// not at all.
///
/// # Errors
///
/// When the answer cannot be computed or written.
pub fn deliver(
    path: Option<&Path>,
    replace: bool,
    out: &mut impl Write,
    answer: impl FnOnce(&mut Vec<u8>) -> Result<(), Failure>,
) -> Result<(), Failure> {
    let path = path.filter(|path| *path != Path::new("-"));
    if let Some(path) = path {
        check_free(path, replace)?;
    }
    leave_nothing_behind()?;
    let mut text = Vec::new();
    answer(&mut text)?;
    write_to(path, replace, out, |out| out.write_all(&text))
}

/// Writes to a file, which gets its name when all is written, or to standard output.
pub fn write_to(
    path: Option<&Path>,
    replace: bool,
    out: &mut impl Write,
    write: impl FnOnce(&mut dyn Write) -> io::Result<()>,
) -> Result<(), Failure> {
    let Some(path) = path else {
        write(out)?;
        return Ok(());
    };
    let failed = |error: io::Error| {
        Failure::Outside(format!(
            "{} cannot be written ({error}): check its folder and the disk",
            path.display()
        ))
    };
    check_free(path, replace)?;
    // Something that is no file, such as a pipe, is written to as it is.
    let is_other = fs::metadata(path).is_ok_and(|found| !found.is_file());
    let made = if is_other {
        path.to_owned()
    } else {
        beside(path)
    };
    if !is_other {
        unfinished(Some(made.clone()));
    }
    let written = File::create(&made).and_then(|file| {
        let mut file = BufWriter::new(file);
        write(&mut file)?;
        file.flush()?;
        if is_other {
            return Ok(());
        }
        file.get_ref().sync_all()?;
        fs::rename(&made, path)
    });
    unfinished(None);
    written.map_err(|error| {
        if !is_other {
            // Half a file helps nobody.
            let _ = fs::remove_file(&made);
        }
        failed(error)
    })
}

/// A name in the same folder for what is not finished.
fn beside(path: &Path) -> PathBuf {
    let mut name = std::ffi::OsString::from(".");
    name.push(path.file_name().unwrap_or_default());
    name.push(format!(".{}.new", std::process::id()));
    path.with_file_name(name)
}
