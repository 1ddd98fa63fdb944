// The one list of actions. It holds nothing else, so that a build script can `include!` it:
//
//     include!("crates/app/src/actions.rs");
//     macro_rules! names { ($($name:ident),* $(,)?) => { &[$(stringify!($name)),*] } }
//     const COMMANDS: &[&str] = actions!(names);
//
// Each name is that of a file in `action/` as well, which tells what the action takes, does and answers.
/// Hands the names of all actions to a macro.
#[macro_export]
macro_rules! actions {
    ($with:ident) => {
        $with! {
            catalogue,
            job_list,
            job_create,
            job_demo,
            job_open,
            job_history,
            job_earlier,
            job_next_look,
            job_put_away,
            job_bring_back,
            job_away,
            edits_append,
            photo_add,
            photo_get,
            photo_take_in,
            shot_begin,
            shot_list,
            shot_end,
            shot_drop,
            document_get,
            label_find,
            label_read,
            arrival_begin,
            arrival_add,
            arrival_list,
            arrival_drop,
            archive_export,
            archive_import,
            archive_kept,
            shop_export,
            backup_get,
            backup_make,
            backup_forget,
            way_get,
            way_stop,
            shelf_get,
            instrument_keep,
            instrument_drop,
            sheet_keep,
            sheet_drop,
            sheet_export,
            sheet_import,
            prices_keep,
            prices_learnt,
            settings_get,
            settings_set,
        }
    };
}
