// What our Swift and Tauri's call of UIKit, after its public reference; none of it does anything.
@_exported import Foundation

open class UIResponder: NSObject {}

open class UIView: UIResponder {
  open var bounds: CGRect { fatalError() }
}

open class UIViewController: UIResponder {
  open var view: UIView! { fatalError() }
  open var title: String?
  open var popoverPresentationController: UIPopoverPresentationController? { fatalError() }
  open func present(
    _ viewControllerToPresent: UIViewController, animated flag: Bool, completion: (() -> Void)? = nil
  ) {}
  open func dismiss(animated flag: Bool, completion: (() -> Void)? = nil) {}
}

public struct UIPopoverArrowDirection: OptionSet {
  public let rawValue: UInt
  public init(rawValue: UInt) { self.rawValue = rawValue }
}

open class UIPopoverPresentationController: NSObject {
  open var sourceView: UIView?
  open var sourceRect: CGRect { get { fatalError() } set { fatalError() } }
  open var permittedArrowDirections: UIPopoverArrowDirection { get { fatalError() } set { fatalError() } }
}

open class UIImage: NSObject {
  public func jpegData(compressionQuality: CGFloat) -> Data? { fatalError() }
}

open class UINavigationController: UIViewController {}

public protocol UINavigationControllerDelegate: NSObjectProtocol {}

public protocol UIImagePickerControllerDelegate: NSObjectProtocol {
  func imagePickerController(
    _ picker: UIImagePickerController, didFinishPickingMediaWithInfo info: [UIImagePickerController.InfoKey: Any])
  func imagePickerControllerDidCancel(_ picker: UIImagePickerController)
}

open class UIImagePickerController: UINavigationController {
  public enum SourceType: Int {
    case photoLibrary, camera, savedPhotosAlbum
  }
  public struct InfoKey: RawRepresentable, Hashable {
    public let rawValue: String
    public init(rawValue: String) { self.rawValue = rawValue }
    public static let originalImage = InfoKey(rawValue: "")
  }
  open class func isSourceTypeAvailable(_ sourceType: SourceType) -> Bool { fatalError() }
  open var sourceType: SourceType { get { fatalError() } set { fatalError() } }
  open weak var delegate: (any UIImagePickerControllerDelegate & UINavigationControllerDelegate)?
}

open class UIActivity: NSObject {
  public struct ActivityType: RawRepresentable, Hashable {
    public let rawValue: String
    public init(rawValue: String) { self.rawValue = rawValue }
  }
}

open class UIActivityViewController: UIViewController {
  public typealias CompletionWithItemsHandler = (UIActivity.ActivityType?, Bool, [Any]?, Error?) -> Void
  public init(activityItems: [Any], applicationActivities: [UIActivity]?) { fatalError() }
  open var completionWithItemsHandler: CompletionWithItemsHandler?
}

open class UIApplication: UIResponder {
  open class var shared: UIApplication { fatalError() }
  open var isIdleTimerDisabled: Bool { get { fatalError() } set { fatalError() } }
}

open class UIFeedbackGenerator: NSObject {}

open class UIImpactFeedbackGenerator: UIFeedbackGenerator {
  public enum FeedbackStyle: Int {
    case light, medium, heavy, soft, rigid
  }
  public init(style: FeedbackStyle) {}
  open func impactOccurred() {}
}
