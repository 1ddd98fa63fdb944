import PhoneRules
import Tauri
import UIKit
import WebKit

struct TakePhotoArgs: Decodable {
  let path: String
  let room: Int64
}

struct ShareArgs: Decodable {
  let paths: [String]
  let mime: String
  let title: String
  let text: String
}

struct KeepAwakeArgs: Decodable {
  let on: Bool
}

/// Does what Rust asks and answers with a code; what is asked was checked there, and what an answer means is known
/// there.
class PhonePlugin: Plugin, UIImagePickerControllerDelegate, UINavigationControllerDelegate {
  /// The photo that the open camera is to take.
  private var photo: (invoke: Invoke, file: URL)?

  @objc public func takePhoto(_ invoke: Invoke) throws {
    let args = try invoke.parseArgs(TakePhotoArgs.self)
    let file = URL(fileURLWithPath: args.path)
    DispatchQueue.main.async {
      guard UIImagePickerController.isSourceTypeAvailable(.camera), let below = self.manager.viewController else {
        return Self.refuse(invoke, .noCamera)
      }
      guard hasRoom(args.room, at: file) else { return Self.refuse(invoke, .noRoom) }
      let camera = UIImagePickerController()
      camera.sourceType = .camera
      camera.delegate = self
      self.photo = (invoke, file)
      below.present(camera, animated: true)
    }
  }

  func imagePickerController(
    _ camera: UIImagePickerController, didFinishPickingMediaWithInfo info: [UIImagePickerController.InfoKey: Any]
  ) {
    let image = info[.originalImage] as? UIImage
    close(camera) { file in
      // Upright or not is written into the file, as a camera does.
      guard let bytes = image?.jpegData(compressionQuality: 0.92) else { return }
      try bytes.write(to: file, options: .atomic)
    }
  }

  func imagePickerControllerDidCancel(_ camera: UIImagePickerController) {
    close(camera) { _ in }
  }

  /// What was written is on the disk before Rust hears of it.
  private func close(_ camera: UIImagePickerController, write: @escaping (URL) throws -> Void) {
    let photo = self.photo
    self.photo = nil
    camera.dismiss(animated: true)
    guard let (invoke, file) = photo else { return }
    DispatchQueue.global(qos: .userInitiated).async {
      do {
        try write(file)
        invoke.resolve()
      } catch {
        Self.refuse(invoke, Code.of(error))
      }
    }
  }

  @objc public func share(_ invoke: Invoke) throws {
    let args = try invoke.parseArgs(ShareArgs.self)
    DispatchQueue.main.async {
      guard let below = self.manager.viewController, let view = below.view else {
        return Self.refuse(invoke, .noShare)
      }
      let files: [Any] = args.paths.map { URL(fileURLWithPath: $0) }
      let sheet = UIActivityViewController(
        activityItems: args.text.isEmpty ? files : files + [args.text], applicationActivities: nil)
      sheet.title = args.title
      // A tablet shows it at a place of the page, and ends the program if it is told none.
      sheet.popoverPresentationController?.sourceView = view
      sheet.popoverPresentationController?.sourceRect = CGRect(
        x: view.bounds.midX, y: view.bounds.midY, width: 0, height: 0)
      sheet.popoverPresentationController?.permittedArrowDirections = []
      sheet.completionWithItemsHandler = { _, completed, _, failure in
        if failure != nil { return Self.refuse(invoke, .failed) }
        invoke.resolve(["chosen": completed])
      }
      below.present(sheet, animated: true)
    }
  }

  @objc public func keepAwake(_ invoke: Invoke) throws {
    let args = try invoke.parseArgs(KeepAwakeArgs.self)
    DispatchQueue.main.async {
      UIApplication.shared.isIdleTimerDisabled = args.on
      invoke.resolve()
    }
  }

  @objc public func tick(_ invoke: Invoke) throws {
    DispatchQueue.main.async {
      UIImpactFeedbackGenerator(style: .light).impactOccurred()
      invoke.resolve()
    }
  }

  private static func refuse(_ invoke: Invoke, _ code: Code) {
    invoke.reject("The phone did not do it.", code: code.rawValue)
  }
}

// Public, or a release build leaves it out.
@_cdecl("init_plugin_phone")
public func initPlugin() -> Plugin {
  return PhonePlugin()
}
